package org.grovewright.web.views;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.grovewright.model.Preferences.Units;
import org.grovewright.plan.Plan;
import org.grovewright.web.views.LabelsPage.Label;
import org.junit.jupiter.api.Test;

class LabelsPageTest {
  private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-\\d+z");

  /**
   * Draws a label's path as a browser would, with a quiet zone, and reads it with a reader of
   * codes.
   */
  private static String read(Label label) throws Exception {
    int scale = 4;
    int side = (label.size() + 8) * scale;
    int[] pixels = new int[side * side];
    Arrays.fill(pixels, 0xffffff);
    Matcher run = RUN.matcher(label.path());
    while (run.find()) {
      int x = Integer.parseInt(run.group(1)) + 4;
      int y = Integer.parseInt(run.group(2)) + 4;
      for (int dy = 0; dy < scale; dy++) {
        int from = (y * scale + dy) * side + x * scale;
        Arrays.fill(pixels, from, from + Integer.parseInt(run.group(3)) * scale, 0);
      }
    }
    return new QRCodeReader()
        .decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(side, side, pixels))))
        .getText();
  }

  @Test
  void everyCodeOpensThePageOfItsPlant() throws Exception {
    Plan plan = SpanishPagesTest.plan("demo.yaml");
    LabelsPage page =
        LabelsPage.of(
            plan.grove(),
            plan.catalogue(),
            "http://192.168.1.20:4680/site/0123456789abcdef",
            Voice.of("en", Units.METRIC, "AUD"));
    assertThat(page.labels()).hasSameSizeAs(plan.grove().plantings());
    for (Label label : page.labels()) {
      assertThat(read(label))
          .isEqualTo(label.address())
          .isEqualTo(
              "http://192.168.1.20:4680/site/0123456789abcdef/plant/"
                  + label.plant().replace(" ", "%20"));
    }
  }
}
