// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.robust;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The list of a release's parts against what the modules say they use. */
class PartsListTest {
  private static final Path ROOT = Path.of("../..");
  private static final Pattern DEPENDENCY = Pattern.compile("(?s)<dependency>(.*?)</dependency>");

  @Test
  void everyLibraryThatCoreAndBatchNameStandsInTheListWithItsVersionAndLicence() throws Exception {
    Map<String, String> versions = versions();
    String list = Files.readString(ROOT.resolve("batch/proving/ROBUSTNESS.md"));
    Map<String, String> missing = new TreeMap<>();
    int named = 0;
    for (String module : new String[] {"core/pom.xml", "batch/pom.xml"}) {
      // What stands before the profiles: those are tools, no parts.
      String pom = Files.readString(ROOT.resolve(module)).split("<profiles>", 2)[0];
      Matcher used = DEPENDENCY.matcher(pom);
      while (used.find()) {
        String name = name(used.group(1));
        boolean part = !used.group(1).contains("<scope>test") && !name.startsWith("org.raftgauge:");
        named += part ? 1 : 0;
        String row = "| " + name + " | " + versions.get(name) + " | ";
        if (part && (!list.contains(row) || list.contains(row + "not said"))) {
          missing.put(name, row);
        }
      }
    }
    assertTrue(named > 10, "libraries found in the modules: " + named);
    assertEquals(
        Map.of(),
        missing,
        "run mvn -B -Ppublish -DskipTests package, then batch/proving/prove robustness");
  }

  private static Map<String, String> versions() throws Exception {
    String parent = Files.readString(ROOT.resolve("pom.xml"));
    Map<String, String> versions = new TreeMap<>();
    Matcher managed = DEPENDENCY.matcher(parent);
    while (managed.find()) {
      Matcher version = Pattern.compile("<version>(.*?)</version>").matcher(managed.group(1));
      if (version.find()) {
        versions.put(name(managed.group(1)), value(version.group(1), parent));
      }
    }
    return versions;
  }

  private static String value(String version, String parent) {
    Matcher property = Pattern.compile("\\$\\{(.*?)}").matcher(version);
    if (!property.matches()) {
      return version;
    }
    Matcher value =
        Pattern.compile("<" + property.group(1) + ">(.*?)</" + property.group(1) + ">")
            .matcher(parent);
    return value.find() ? value.group(1) : version;
  }

  private static String name(String dependency) {
    return dependency.replaceAll("(?s).*?<groupId>(.*?)</groupId>.*", "$1")
        + ":"
        + dependency.replaceAll("(?s).*?<artifactId>(.*?)</artifactId>.*", "$1");
  }
}
