package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.irrigation.LateralProfile.Stop;
import org.grovewright.irrigation.ZoneResult.OutletResult;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LateralProfileTest {
  private static Plan plan(String example) throws Exception {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    try (InputStream in =
        LateralProfileTest.class.getResourceAsStream("/org/grovewright/examples/" + example)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Planner.plan(
          new DescriptionReader(catalogue, new WeatherOfDescription())
              .read(text, example, Path.of("")),
          catalogue);
    }
  }

  /**
   * The profile lies on the tubing as designed and carries the pressures of the emitters on it:
   * hydrostatics (pressure = head less ground) at every stop, and a loop that comes back to the
   * head it set out with.
   */
  @ParameterizedTest
  @ValueSource(strings = {"demo.yaml", "us-gravity.yaml"})
  void profilesMeetTheEmittersAndTheGround(String example) throws Exception {
    Plan plan = plan(example);
    int emitters = 0;
    for (ZoneResult zone : plan.watering().zones()) {
      for (LateralProfile profile : LateralProfile.of(zone)) {
        Stop first = profile.stops().get(0);
        Stop last = profile.stops().get(profile.stops().size() - 1);
        assertThat(first.alongM()).isZero();
        if (profile.line().closed()) {
          assertThat(last.alongM()).isCloseTo(profile.line().lengthM(), within(0.01));
          assertThat(last.headM()).isEqualTo(first.headM());
        }
        for (OutletResult outlet : profile.outlets()) {
          emitters++;
          if (outlet.outlet().feederM() == 0) {
            assertThat(profile.stops())
                .as(outlet.outlet().id())
                .anySatisfy(
                    stop -> {
                      assertThat(stop.alongM()).isCloseTo(outlet.outlet().alongM(), within(0.002));
                      assertThat(stop.pressurePa()).isCloseTo(outlet.pressurePa(), within(1e-6));
                    });
          }
        }
      }
    }
    assertThat(emitters)
        .isEqualTo(plan.watering().zones().stream().mapToInt(z -> z.outlets().size()).sum());
  }
}
