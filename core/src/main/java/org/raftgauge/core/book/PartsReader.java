// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.raftgauge.core.problem.Findings;

/** Reads {@code layouts.yaml}, {@code crops.yaml} and {@code stations/}. */
final class PartsReader {
  private final Path folder;
  private final Findings findings;
  private final Broken broken;

  PartsReader(Path folder, Findings findings) {
    this.folder = folder;
    this.findings = findings;
    this.broken = new Broken(findings);
  }

  Parts read() {
    Map<String, List<Layout>> layouts = layouts();
    Map<String, Crop> crops = crops();
    Parts parts = new Parts(layouts, crops, Map.of(), broken);
    return new Parts(layouts, crops, stations(parts.layoutNames()), broken);
  }

  private Map<String, List<Layout>> layouts() {
    Map<String, List<Layout>> layouts = new LinkedHashMap<>();
    for (Named part : parts("layouts.yaml", "layout")) {
      broken
          .watch(
              "layout " + part.name(),
              () ->
                  part.check()
                      .map(value -> LayoutReader.read(part.name(), value))
                      .filter(versions -> !versions.isEmpty()))
          .ifPresent(versions -> layouts.put(part.name(), versions));
    }
    return layouts;
  }

  private Map<String, Crop> crops() {
    List<String> graders =
        files("graders").stream()
            .filter(file -> file.toString().endsWith(".yaml"))
            .map(PartsReader::nameOf)
            .toList();
    CropReader reader = new CropReader(ShippedColours.BY_RULES, colours(), graders, broken);
    Map<String, Crop> crops = new LinkedHashMap<>();
    for (Named part : parts("crops.yaml", "crop")) {
      broken
          .watch("crop " + part.name(), part::check)
          .ifPresent(value -> crops.putAll(reader.read(part.name(), value)));
    }
    return crops;
  }

  /** Reads the taught colour models; one that cannot be used is known all the same. */
  private Map<String, Optional<TaughtColour>> colours() {
    Map<String, Optional<TaughtColour>> colours = new LinkedHashMap<>(ShippedColours.taught());
    for (Path file : files("colour")) {
      String shown = "colour/" + file.getFileName();
      String name = nameOf(file);
      if (!shown.endsWith(".yaml")) {
        findings.warning(
            shown, "the file is not read", "give it the ending .yaml, or move it away");
      } else if (ShippedColours.has(name)) {
        findings.error(shown, "the name is that of a built-in colour model", "rename the file");
      } else {
        colours.put(
            name,
            broken.watch("colour model " + name, () -> ColourReader.read(name, file, findings)));
      }
    }
    return colours;
  }

  private Map<String, Station> stations(Known layouts) {
    Map<String, Station> stations = new LinkedHashMap<>();
    for (Path file : files("stations")) {
      String shown = "stations/" + file.getFileName();
      if (!shown.endsWith(".yaml")) {
        findings.warning(
            shown, "the file is not read", "give it the ending .yaml, or move it away");
        continue;
      }
      String name = nameOf(file);
      broken
          .watch(
              "station " + name,
              () ->
                  Optional.of(name)
                      .filter(n -> Names.check(n, (f, remedy) -> findings.error(shown, f, remedy)))
                      .flatMap(n -> YamlFile.read(file, shown, findings))
                      .flatMap(map -> StationReader.read(name, map, layouts)))
          .ifPresent(station -> stations.put(name, station));
    }
    if (stations.isEmpty() && broken.names("station").isEmpty()) {
      findings.error(
          "stations", "there is no station", "write one, as in stations/photo-bench.yaml");
    }
    return stations;
  }

  private record Named(String name, YamlValue value) {
    /** Returns the value, unless the name is not one. */
    Optional<YamlValue> check() {
      return Names.check(name, value::keyError) ? Optional.of(value) : Optional.empty();
    }
  }

  private List<Named> parts(String file, String kind) {
    List<Named> parts = new ArrayList<>();
    Optional<YamlMap> top = YamlFile.read(folder.resolve(file), file, findings);
    top.flatMap(map -> map.requiredMap(kind + "s"))
        .ifPresentOrElse(
            map ->
                List.copyOf(map.keys())
                    .forEach(name -> parts.add(new Named(name, map.value(name).orElseThrow()))),
            () -> broken.lose(kind));
    top.ifPresent(YamlMap::finish);
    return parts;
  }

  /** Returns the files of a folder of the book in the order of their names, hidden ones aside. */
  private List<Path> files(String name) {
    Path inner = folder.resolve(name);
    if (!Files.isDirectory(inner)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(inner)) {
      return files
          .filter(
              file -> Files.isRegularFile(file) && !file.getFileName().toString().startsWith("."))
          .sorted()
          .toList();
    } catch (IOException unreadable) {
      findings.error(
          name, "the folder cannot be read (" + unreadable.getMessage() + ")", "mend its rights");
      return List.of();
    }
  }

  private static String nameOf(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }
}
