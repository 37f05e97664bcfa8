package org.grovewright.cli;

import java.util.Objects;
import picocli.CommandLine.IVersionProvider;

/** The version of the program as built. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String built = Version.class.getPackage().getImplementationVersion();
    return new String[] {"grovewright " + Objects.requireNonNullElse(built, "development build")};
  }
}
