package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.grovewright.model.Grove;
import org.junit.jupiter.api.Test;

class StarterTest {
  @Test
  void readsTheStarter() {
    Grove grove = Descriptions.READER.read(Descriptions.starter(), "starter.yaml", Path.of("."));
    assertThat(grove.plantings()).hasSize(5 + 8 + 5 + 4 + 1);
  }
}
