// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.cli;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds a text against a JSON Schema. */
final class PondSchema {

  private PondSchema() {}

  /** Returns what of a text breaks a schema of 2020-12, formats such as dates too. */
  static Set<String> wrong(String schema, String json) {
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
        .getSchema(schema)
        .validate(
            json,
            InputFormat.JSON,
            context -> context.getExecutionConfig().setFormatAssertionsEnabled(true))
        .stream()
        .map(ValidationMessage::getMessage)
        .collect(Collectors.toSet());
  }
}
