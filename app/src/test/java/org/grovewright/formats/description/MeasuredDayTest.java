package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.model.Grove;
import org.junit.jupiter.api.Test;

/** A tape cannot be laid to a plant before it stands there. */
class MeasuredDayTest {
  private static Grove read(String more) throws IOException {
    String text = Files.readString(Path.of("../examples/us-gravity.yaml"));
    String changed = text.replace("{species: pear,", "{species: pear, " + more);
    assertThat(changed).isNotEqualTo(text);
    return new DescriptionReader(CatalogueFiles.load().catalogue(), null)
        .read(changed, "g.yaml", Path.of(""));
  }

  private static String problem(String more) {
    return catchThrowableOfType(DescriptionException.class, () -> read(more)).getMessage();
  }

  @Test
  void aDayBeforePlantingIsRefusedByTheNameOfItsField() throws IOException {
    // The row is planted on 2027-03-06.
    assertThat(problem("measured_height: 5 ft, measured_on: 2027-03-05,"))
        .contains("measured_on", "2027-03-05 is before the plant is set on 2027-03-06");
    // What the entry says of itself goes before the row.
    assertThat(problem("planted: 2027-05-01, measured_height: 5 ft, measured_on: 2027-04-30,"))
        .contains("measured_on", "2027-04-30 is before the plant is set on 2027-05-01");
    assertThat(read("measured_height: 5 ft, measured_on: 2027-03-06,").plantings())
        .filteredOn(plant -> plant.measured().on().isPresent())
        .hasSize(1);
  }
}
