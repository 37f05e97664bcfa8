package org.grovewright.web;

import io.javalin.config.JettyConfig;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.net.ssl.SSLContext;
import javax.net.ssl.X509ExtendedKeyManager;
import nl.altindag.ssl.SSLFactory;
import nl.altindag.ssl.pem.util.PemUtils;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.grovewright.web.ServerSettings.Certificate;

/** Listening with a certificate. */
final class Https {
  private Https() {}

  /**
   * Makes the server listen with a certificate.
   *
   * @throws CannotServeException if the certificate or its key cannot be used
   */
  static void addTo(JettyConfig jetty, ServerSettings settings, Certificate certificate) {
    SSLContext context = context(certificate);
    jetty.addConnector(
        (server, plain) -> {
          SslContextFactory.Server ssl = new SslContextFactory.Server();
          ssl.setSslContext(context);
          HttpConfiguration secure = new HttpConfiguration(plain);
          // The host of a request is checked by the guard, and a certificate may name others.
          secure.addCustomizer(new SecureRequestCustomizer(false));
          ServerConnector connector =
              new ServerConnector(
                  server,
                  new SslConnectionFactory(ssl, "http/1.1"),
                  new HttpConnectionFactory(secure));
          connector.setHost(settings.bind());
          connector.setPort(settings.port());
          return connector;
        });
  }

  private static SSLContext context(Certificate certificate) {
    check(certificate.chain(), "certificate");
    check(certificate.key(), "key");
    try {
      X509ExtendedKeyManager identity =
          PemUtils.loadIdentityMaterial(certificate.chain(), certificate.key());
      return SSLFactory.builder()
          .withIdentityMaterial(identity)
          .withDefaultTrustMaterial()
          .withProtocols("TLSv1.3", "TLSv1.2")
          .build()
          .getSslContext();
    } catch (RuntimeException e) {
      throw new CannotServeException(
          "The certificate "
              + certificate.chain()
              + " and the key "
              + certificate.key()
              + " cannot be used: give a certificate and its private key without a password, both as"
              + " PEM text.");
    }
  }

  private static void check(Path file, String what) {
    if (!Files.isReadable(file)) {
      throw new CannotServeException(
          "The " + what + " " + file + " cannot be read; check its name and that you may open it.");
    }
  }
}
