package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;

/** Supplies that cannot carry the system: the plan is made and says where it falls short. */
class WeakSupplyTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Path EXAMPLES = Path.of("../examples");

  private static Plan plan(String example, String... replacements) throws IOException {
    String text = Files.readString(EXAMPLES.resolve(example));
    for (int i = 0; i < replacements.length; i += 2) {
      assertThat(text).contains(replacements[i]);
      text = text.replace(replacements[i], replacements[i + 1]);
    }
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, example, EXAMPLES), CATALOGUE);
  }

  @Test
  void aTankBelowTheRowsSaysThatNoPressureReachesThePlants() throws IOException {
    Plan plan =
        plan(
            "us-gravity.yaml",
            "at: [17 ft, 88 ft]",
            "at: [17 ft, 4 ft]",
            "route: [[18 ft, 80 ft], [19 ft, 56 ft]]",
            "route: []");

    assertThat(plan.fallsShort()).isTrue();
    assertThat(plan.findings()).extracting(Finding::code).contains("irrigation.pressure-too-low");
  }

  @Test
  void aSmallDailyVolumeLeavesPlantsShortAndSaysWhich() throws IOException {
    Plan plan = plan("demo.yaml", "daily_limit: 3000 L/day", "daily_limit: 120 L/day");

    assertThat(plan.findings()).extracting(Finding::code).contains("timer.short");
    double most = 0;
    for (TimerSetting setting : plan.programme().settings()) {
      double flow = plan.watering().zonesIn(setting.year()).get(0).flowM3PerS();
      if (!setting.off()) {
        most = Math.max(most, setting.minutesPerWatering() * 60 * flow);
      }
    }
    assertThat(most).isLessThanOrEqualTo(0.120 * (1 + 1e-9));
  }

  @Test
  void aTapThatTricklesIsSharedAmongZones() throws IOException {
    Plan plan =
        plan(
            "demo.yaml",
            "{volume: 10 L, time: 21 s, pressure: 0 kPa}",
            "{volume: 10 L, time: 190 s, pressure: 0 kPa}",
            "    - {volume: 10 L, time: 30 s, pressure: 210 kPa}\n",
            "");

    assertThat(plan.watering().zones().size()).isGreaterThan(1);
  }
}
