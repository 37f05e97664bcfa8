package org.grovewright.store;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * The sorts of photo that are kept: pictures of dots alone, which a browser shows and never runs.
 * What a file is called, or says it is, counts for nothing; its first bytes tell.
 */
public enum PhotoType {
  /** JPEG (ITU-T T.81): start of image, then another marker. */
  JPEG("image/jpeg", "jpg", "\u00ff\u00d8\u00ff"),
  /** PNG (W3C PNG specification, section 5.2). */
  PNG("image/png", "png", "\u0089PNG\r\n\u001a\n"),
  /** WebP: a RIFF file of the form {@code WEBP}; its size stands between the two words. */
  WEBP("image/webp", "webp", "RIFF\0\0\0\0WEBP");

  private final String mediaType;
  private final String ending;
  private final byte[] head;

  PhotoType(String mediaType, String ending, String head) {
    this.mediaType = mediaType;
    this.ending = ending;
    this.head = head.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** The sort of photo that bytes are, if they are one that is kept. */
  public static Optional<PhotoType> of(byte[] content) {
    return Arrays.stream(values()).filter(type -> type.begins(content)).findFirst();
  }

  private boolean begins(byte[] content) {
    if (content.length <= head.length) {
      return false;
    }
    for (int i = 0; i < head.length; i++) {
      boolean anything = this == WEBP && i >= 4 && i < 8;
      if (!anything && content[i] != head[i]) {
        return false;
      }
    }
    return true;
  }

  /** Its media type. */
  public String mediaType() {
    return mediaType;
  }

  /** What the name of such a file ends with, without the dot. */
  public String ending() {
    return ending;
  }
}
