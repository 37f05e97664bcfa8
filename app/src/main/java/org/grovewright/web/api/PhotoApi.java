package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import org.grovewright.store.JournalEntry.Photo;
import org.grovewright.store.PhotoType;
import org.grovewright.store.Photos;
import org.grovewright.web.api.JournalApi.PhotoView;

/** The photos of journal entries. */
final class PhotoApi {
  private static final String PATH = "/api/sites/{id}/journal/{entry}/photo";

  private final Desk desk;

  PhotoApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.post(PATH, this::add, Access.HELPER);
    routes.get(PATH, this::show, Access.VIEWER);
    routes.delete(PATH, this::remove, Access.HELPER);
  }

  private void add(Context context) {
    byte[] content = content(context);
    if (PhotoType.of(content).isEmpty()) {
      throw ApiException.field("photo", "This is no photo; send a JPEG, PNG or WebP picture.");
    }
    String site = context.pathParam("id");
    String entry = context.pathParam("entry");
    Photo photo = desk.store().photos().add(site, entry, content, Caller.from(context).author());
    context.status(201);
    Json.send(context, PhotoView.of(site, entry, photo));
  }

  /** The bytes sent, of which no more are read than a photo may have. */
  private static byte[] content(Context context) {
    byte[] content;
    try (InputStream in = context.bodyInputStream()) {
      content = in.readNBytes(Photos.LARGEST + 1);
    } catch (IOException e) {
      throw new ApiException(400, "cut-off", "The photo did not come in whole; send it again.");
    }
    if (content.length > Photos.LARGEST) {
      throw new ApiException(
          413,
          "too-large",
          "A photo may have at most {0} MB; make it smaller, then send it again.",
          Photos.LARGEST / 1024 / 1024);
    }
    return content;
  }

  private void show(Context context) {
    Photos.Kept photo =
        desk.store()
            .photos()
            .find(context.pathParam("id"), context.pathParam("entry"))
            .orElseThrow(() -> new ApiException(404, "missing", "There is no such photo."));
    String tag = '"' + photo.about().hash() + '"';
    // May be kept, but every look asks whether the reader may still see it.
    context.header("Cache-Control", "private, no-cache").header("ETag", tag);
    if (tag.equals(context.header("If-None-Match"))) {
      context.status(304);
      return;
    }
    context
        // Whatever else hides in the bytes: as a page of its own it can do nothing.
        .header("Content-Security-Policy", "sandbox; default-src 'none'; frame-ancestors 'none'")
        .header(
            "Content-Disposition",
            "inline; filename=\"photo." + photo.about().type().ending() + "\"")
        .contentType(photo.about().type().mediaType())
        .result(photo.content());
  }

  private void remove(Context context) {
    desk.store().photos().remove(context.pathParam("id"), context.pathParam("entry"));
    context.status(204);
  }
}
