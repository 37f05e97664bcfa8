package org.grovewright.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.javalin.http.Context;
import java.util.Locale;
import java.util.Optional;

/** JSON of requests and answers. */
public final class Json {
  private static final int DEEPEST = 40;

  private static final ObjectMapper MAPPER =
      new ObjectMapper(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
                  .build())
          .setSerializationInclusion(JsonInclude.Include.NON_NULL)
          .disable(SerializationFeature.FAIL_ON_EMPTY_BEANS);

  private Json() {}

  /** A value of records, maps, lists, texts and numbers as JSON; members without value left out. */
  public static byte[] bytes(Object value) {
    try {
      return MAPPER.writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an answer cannot be written as JSON", e);
    }
  }

  /** A constant as requests and answers name it: lower case, with hyphens. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Answers with a value. */
  public static void send(Context context, Object value) {
    context.contentType("application/json").result(bytes(value));
  }

  /** The object that a request carries. */
  static JsonNode body(Context context) {
    try {
      JsonNode body = MAPPER.readTree(context.bodyAsBytes());
      if (body.isObject()) {
        checkSigns(body, "");
        return body;
      }
    } catch (java.io.IOException e) {
      throw new ApiException(400, "not-json", "The request is not well-formed JSON.");
    }
    throw new ApiException(400, "not-json", "The request must be a JSON object.");
  }

  /**
   * A zero, or half of a pair of UTF-16, is no sign of any text, and not every database keeps it.
   */
  private static void checkSigns(JsonNode value, String at) {
    if (value.isTextual() && !wellFormed(value.textValue())) {
      throw badSign(at);
    }
    for (int i = 0; value.isArray() && i < value.size(); i++) {
      checkSigns(value.get(i), at + "[" + i + "]");
    }
    value
        .properties()
        .forEach(
            member -> {
              if (!wellFormed(member.getKey())) {
                throw badSign(at);
              }
              checkSigns(
                  member.getValue(), at.isEmpty() ? member.getKey() : at + "." + member.getKey());
            });
  }

  private static ApiException badSign(String field) {
    return ApiException.field(
        field,
        "This text holds a sign that cannot be kept; it may have come with copying from another"
            + " program. Type the text anew.");
  }

  private static boolean wellFormed(String text) {
    return text.codePoints()
        .noneMatch(
            sign ->
                sign == 0 || (sign >= Character.MIN_SURROGATE && sign <= Character.MAX_SURROGATE));
  }

  /** A member that must be a text. */
  static String text(JsonNode body, String name) {
    return optionalText(body, name)
        .orElseThrow(() -> ApiException.field(name, "'{0}' is missing; give a text.", name));
  }

  /** A member that is a text, if it is there. */
  static Optional<String> optionalText(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (value.isMissingNode() || value.isNull()) {
      return Optional.empty();
    }
    if (!value.isTextual()) {
      throw ApiException.field(name, "'{0}' must be a text.", name);
    }
    return Optional.of(value.textValue());
  }

  /** A member that must be a whole number. */
  static long whole(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (!value.canConvertToLong() || !value.isIntegralNumber()) {
      throw ApiException.field(name, "'{0}' must be a whole number.", name);
    }
    return value.longValue();
  }

  /** A member that must be a finite number. */
  static double number(JsonNode body, String name) {
    JsonNode value = body.path(name);
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw ApiException.field(name, "'{0}' must be a number.", name);
    }
    return value.doubleValue();
  }

  /** A JSON value as maps, lists, texts, numbers and truth values. */
  static Object plain(JsonNode value) {
    return MAPPER.convertValue(value, Object.class);
  }

  /** A JSON value as text. */
  static String text(JsonNode value) {
    return value.toString();
  }
}
