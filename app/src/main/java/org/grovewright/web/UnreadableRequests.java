package org.grovewright.web;

import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Answers requests that are no HTTP and so reach no route. Jetty closes the connection after many
 * of them without saying so, and whatever the asker sends next on it would be lost; here it is
 * said.
 */
final class UnreadableRequests extends ErrorHandler {
  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    response.getHeaders().put(HttpHeader.CONNECTION, "close");
    return super.handle(request, response, callback);
  }
}
