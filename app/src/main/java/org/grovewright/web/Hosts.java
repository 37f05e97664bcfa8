package org.grovewright.web;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Names by which the program may be called. A page of another site can have its own name lead to
 * this machine and would then seem to the browser to be our page; but its name stays in the
 * request.
 */
final class Hosts {
  private static final Pattern ADDRESS =
      Pattern.compile("\\d{1,3}(\\.\\d{1,3}){3}|\\[[0-9a-f:.]+\\]");
  private static final Set<String> LOOPBACK = Set.of("localhost", "127.0.0.1", "[::1]");

  private final boolean open;
  private final Set<String> names = new HashSet<>();

  /**
   * Names of a program.
   *
   * @param open whether it is reached from other machines, by numbers of an address too; nobody can
   *     make a number lead elsewhere
   * @param further names besides the usual ones
   */
  Hosts(boolean open, List<String> further) {
    this.open = open;
    names.addAll(LOOPBACK);
    further.forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
  }

  /** Whether the Host of a request, with or without a port, is one of ours. */
  boolean knows(String host) {
    if (host == null) {
      return false;
    }
    String name = host.toLowerCase(Locale.ROOT).replaceFirst(":\\d{1,5}$", "");
    return names.contains(name) || open && ADDRESS.matcher(name).matches();
  }

  /** Whether the Origin of a request is a page from the Host it was sent to. */
  boolean sameOrigin(String origin, String host) {
    try {
      URI uri = new URI(origin);
      return uri.getAuthority() != null
          && uri.getAuthority().equalsIgnoreCase(host)
          && (uri.getScheme().equals("http") || uri.getScheme().equals("https"));
    } catch (URISyntaxException e) {
      return false;
    }
  }
}
