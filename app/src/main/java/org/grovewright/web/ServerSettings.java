package org.grovewright.web;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * How to serve.
 *
 * @param bind address of this machine to listen on
 * @param port port to listen on; 0 takes any that is free
 * @param certificate certificate for HTTPS, if given
 * @param hostNames names under which the program is reached, besides this machine's own
 */
public record ServerSettings(
    String bind, int port, Optional<Certificate> certificate, List<String> hostNames) {
  /** Copies the names. */
  public ServerSettings {
    hostNames = List.copyOf(hostNames);
  }

  /**
   * A certificate in PEM files.
   *
   * @param chain the certificate with those that vouch for it
   * @param key its private key, without a password
   */
  public record Certificate(Path chain, Path key) {}

  /** Serving this machine alone. */
  public static ServerSettings local(int port) {
    return new ServerSettings("127.0.0.1", port, Optional.empty(), List.of());
  }

  /**
   * Whether others than the user of this machine can come in: then they must sign in.
   *
   * @throws UnknownHostException if the address to listen on is none of this machine
   */
  public boolean open() throws UnknownHostException {
    return !hostNames.isEmpty() || !InetAddress.getByName(bind).isLoopbackAddress();
  }
}
