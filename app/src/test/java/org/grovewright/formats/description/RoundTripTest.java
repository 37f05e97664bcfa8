package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.grovewright.model.Grove;
import org.junit.jupiter.api.Test;

class RoundTripTest {
  private static final DescriptionWriter WRITER = new DescriptionWriter(Descriptions.CATALOGUE);

  @Property(tries = 300)
  void whatIsWrittenReadsBackTheSame(@ForAll long seed) {
    Grove grove = Groves.of(seed, Descriptions.CATALOGUE);
    String text = WRITER.write(grove);
    assertThat(Descriptions.read(text)).isEqualTo(grove);
  }

  @Test
  void theStarterReadsBackTheSame() {
    Grove grove = Descriptions.read(Descriptions.starter());
    assertThat(Descriptions.read(WRITER.write(grove))).isEqualTo(grove);
  }

  @Test
  void writingAgainChangesNothing() {
    String once = WRITER.write(Groves.of(3, Descriptions.CATALOGUE));
    assertThat(WRITER.write(Descriptions.read(once))).isEqualTo(once);
  }
}
