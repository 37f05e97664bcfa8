package org.grovewright.store;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;

/**
 * Saves edits until it is killed or nobody listens, and says each on its output once it is saved.
 */
final class SaveLoop {
  private SaveLoop() {}

  /**
   * Starts saving.
   *
   * @param args the data folder, the id of the site and after how many saves to stop by itself
   */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    Store store = Store.open(new StoreAddress.Folder(Path.of(args[0])), InstantSource.system());
    Author author = store.accounts().local().author();
    SiteState state = store.sites().get(args[1]);
    for (long left = Long.parseLong(args[2]); left > 0 && !out.checkError(); left--) {
      String text = text(state.version() + 1);
      NewEdit edit = new NewEdit(Optional.empty(), "Edit", "{}", "S", text);
      state = store.sites().edit(args[1], state.version(), edit, author);
      out.println(state.version());
    }
    store.close();
  }

  /** What is saved as a version: long enough to fill several pages of the file. */
  static String text(long version) {
    return ("version " + version + "\n").repeat(300);
  }
}
