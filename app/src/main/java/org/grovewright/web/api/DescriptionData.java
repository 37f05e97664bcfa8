package org.grovewright.web.api;

import com.fasterxml.jackson.core.JsonPointer;
import org.grovewright.edit.YamlDocument;

/** The values of a description, as its text holds them, for forms. */
final class DescriptionData {
  private DescriptionData() {}

  static Object of(String text) {
    return YamlDocument.parse(text).value(JsonPointer.empty()).orElseThrow();
  }
}
