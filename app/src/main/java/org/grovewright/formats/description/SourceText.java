package org.grovewright.formats.description;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.grovewright.texts.Sentence;

/** Takes the text of a file, never more of it than a description can need. */
final class SourceText {
  /** Largest file that is read, bytes; a description of a thousand plants has a tenth of it. */
  static final int LIMIT_BYTES = 2 * 1024 * 1024;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private SourceText() {}

  /**
   * Reads a file of UTF-8 text.
   *
   * @throws DescriptionException if there is no such file, it is too large, or is not such text
   */
  static String of(Path file) {
    String name = file.toString();
    byte[] bytes;
    if (!Files.exists(file)) {
      throw whole(name, "there is no such file");
    }
    if (Files.isDirectory(file)) {
      throw whole(name, "this is a folder; name the file in it");
    }
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(LIMIT_BYTES + 1);
    } catch (IOException e) {
      throw whole(name, "the file cannot be read; check that you may open it");
    }
    if (bytes.length > LIMIT_BYTES) {
      throw whole(
          name, "the file is larger than 2 MB; a description is a few pages of text, not data");
    }
    return decode(bytes, name);
  }

  private static String decode(byte[] bytes, String name) {
    if (startsWith(bytes, 0xfe, 0xff) || startsWith(bytes, 0xff, 0xfe)) {
      throw at(name, 1, 1, "the file is UTF-16 text; save it as UTF-8");
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    CharBuffer chars = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), chars, true);
    chars.flip();
    String text = chars.toString();
    checkCharacters(text, name);
    if (result.isError()) {
      int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
      throw at(
          name,
          line,
          text.length() - text.lastIndexOf('\n'),
          "this is not UTF-8 text; save the file as plain text in UTF-8");
    }
    return text.startsWith(String.valueOf(BYTE_ORDER_MARK)) ? text.substring(1) : text;
  }

  private static boolean startsWith(byte[] bytes, int first, int second) {
    return bytes.length >= 2 && (bytes[0] & 0xff) == first && (bytes[1] & 0xff) == second;
  }

  /** Refuses control characters, which no editor writes into plain text. */
  static void checkCharacters(String text, String name) {
    int line = 1;
    int lineStart = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n') {
        line++;
        lineStart = i + 1;
      } else if ((c < ' ' && c != '\t' && c != '\r') || c == 0x7f || c == 0xfffe || c == 0xffff) {
        throw at(
            name,
            line,
            i - lineStart + 1,
            "there is a character here that is not text; a description is plain text");
      }
    }
  }

  private static DescriptionException whole(String name, String shape) {
    return at(name, 0, 0, shape);
  }

  private static DescriptionException at(String name, int line, int column, String shape) {
    return new DescriptionException(
        name, List.of(new Problem(line, column, "", Sentence.of(shape))));
  }
}
