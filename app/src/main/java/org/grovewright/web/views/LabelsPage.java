package org.grovewright.web.views;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;

/**
 * Labels to print, one for each plant, with a QR code that opens the plant's page.
 *
 * @param labels the labels in the order of the description
 */
public record LabelsPage(List<Label> labels) {
  /**
   * One label.
   *
   * @param plant the plant's name in the description
   * @param species common name
   * @param latin botanical name
   * @param cultivar cultivar, empty if not said
   * @param role main, companion or groundcover
   * @param row its row, empty if it is in none
   * @param planted when it was or will be planted, in words
   * @param address what the code says
   * @param size modules along a side of the code
   * @param path the dark modules as an SVG path in units of modules
   */
  public record Label(
      String plant,
      String species,
      String latin,
      String cultivar,
      String role,
      String row,
      String planted,
      String address,
      int size,
      String path) {}

  /**
   * The labels of a grove.
   *
   * @param grove the grove
   * @param catalogue names its species
   * @param address start of the addresses of its pages, e.g. {@code
   *     http://192.168.1.20:4680/site/abc}
   * @param voice the reader's language
   */
  public static LabelsPage of(Grove grove, Catalogue catalogue, String address, Voice voice) {
    return new LabelsPage(
        grove.plantings().stream().map(p -> label(p, catalogue, address, voice)).toList());
  }

  private static Label label(Planting plant, Catalogue catalogue, String address, Voice voice) {
    Species species = catalogue.species().get(plant.speciesKey());
    String name = URLEncoder.encode(plant.id(), StandardCharsets.UTF_8).replace("+", "%20");
    String page = address + "/plant/" + name;
    ByteMatrix code = code(page);
    return new Label(
        plant.id(),
        voice.say(species.name()),
        species.latin(),
        plant.cultivar().orElse(""),
        species.role().name().toLowerCase(java.util.Locale.ROOT),
        plant.rowId().orElse(""),
        voice.language().shortDate(plant.plantedOn()),
        page,
        code.getWidth(),
        path(code));
  }

  /** A code that still reads with a quarter of it muddy (level Q of ISO/IEC 18004). */
  private static ByteMatrix code(String text) {
    try {
      return Encoder.encode(
              text,
              ErrorCorrectionLevel.Q,
              Map.of(EncodeHintType.CHARACTER_SET, StandardCharsets.UTF_8.name()))
          .getMatrix();
    } catch (WriterException e) {
      throw new IllegalArgumentException("the address is too long for a code: " + text, e);
    }
  }

  private static String path(ByteMatrix code) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < code.getHeight(); y++) {
      for (int x = 0; x < code.getWidth(); x++) {
        int from = x;
        while (x < code.getWidth() && code.get(x, y) == 1) {
          x++;
        }
        if (x > from) {
          path.append('M').append(from).append(' ').append(y).append('h').append(x - from);
          path.append("v1h-").append(x - from).append('z');
        }
      }
    }
    return path.toString();
  }
}
