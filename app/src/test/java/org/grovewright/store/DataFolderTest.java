package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DataFolderTest {
  private static final Path HOME = Path.of("/home/mara");

  private static StoreAddress find(String system, Map<String, String> environment) {
    return DataFolder.find(Optional.empty(), environment, system, HOME);
  }

  private static StoreAddress folder(String path) {
    return new StoreAddress.Folder(Path.of(path));
  }

  // XDG Base Directory Specification 0.8, "Basics": $XDG_DATA_HOME, else $HOME/.local/share; a
  // relative path is invalid and to be ignored. From memory.
  @Test
  void followsTheOperatingSystem() {
    assertThat(find("Linux", Map.of())).isEqualTo(folder("/home/mara/.local/share/grovewright"));
    assertThat(find("Linux", Map.of("XDG_DATA_HOME", "/d"))).isEqualTo(folder("/d/grovewright"));
    assertThat(find("Linux", Map.of("XDG_DATA_HOME", "d")))
        .isEqualTo(folder("/home/mara/.local/share/grovewright"));
    assertThat(find("Mac OS X", Map.of()))
        .isEqualTo(folder("/home/mara/Library/Application Support/Grovewright"));
    assertThat(find("Windows 11", Map.of("APPDATA", "/c/mara/Roaming")))
        .isEqualTo(folder("/c/mara/Roaming/Grovewright"));
  }

  @Test
  void theOwnersWordComesFirst() {
    Map<String, String> environment = Map.of("GROVEWRIGHT_DATA", "/env");
    assertThat(find("Linux", environment)).isEqualTo(folder("/env"));
    assertThat(DataFolder.find(Optional.of("/asked"), environment, "Linux", HOME))
        .isEqualTo(folder("/asked"));
    assertThat(DataFolder.find(Optional.of("jdbc:postgresql:x"), environment, "Linux", HOME))
        .isInstanceOf(StoreAddress.Postgres.class);
    assertThatThrownBy(() -> StoreAddress.parse("jdbc:sqlite:x"))
        .hasMessageContaining("must be a folder, or start with jdbc:postgresql:");
  }

  @Test
  void doesNotPrintAPassword() {
    assertThat(StoreAddress.parse("jdbc:postgresql://h/d?password=secret").toString())
        .doesNotContain("secret");
  }
}
