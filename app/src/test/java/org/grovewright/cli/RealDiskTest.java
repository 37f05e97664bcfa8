package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The running program on a disk that is full, and on one that may only be read: a small disk of its
 * own, in memory, which only the program sees and which ends with it. Where the machine allows no
 * such disk the tests say that they were skipped.
 */
class RealDiskTest {
  private static final String IN_MEMORY = "mount -t tmpfs -o size=4m none ";
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String MOVE =
      "{\"onVersion\":1,\"label\":\"x\",\"operations\":[{\"type\":\"movePlant\",\"plant\":\"A2\",\"x\":15,\"y\":12}]}";
  private static final String NOTE =
      "{\"since\":0,\"changes\":[{\"id\":\"11111111-aaaa\",\"day\":\"2027-04-01\",\"kind\":\"note\",\"subjectKind\":\"site\",\"subject\":\"\",\"note\":\"x\"}]}";

  @TempDir Path folder;

  private static List<String> alone(String script) {
    List<String> command = new ArrayList<>(List.of("unshare", "--mount"));
    if (!"root".equals(System.getProperty("user.name"))) {
      command.addAll(List.of("--user", "--map-root-user"));
    }
    command.addAll(List.of("sh", "-ec", script));
    return command;
  }

  @BeforeEach
  void checkThere() throws Exception {
    boolean there;
    try {
      Files.createDirectories(folder.resolve("data"));
      there = run(alone("mount -t tmpfs -o size=1m none " + folder.resolve("data")));
    } catch (IOException e) {
      there = false;
    }
    Assumptions.assumeTrue(there, "skipped: this machine lets nobody mount a small disk");
  }

  /** The program on its small disk. */
  private static final class Running implements AutoCloseable {
    private final Process process;
    private final HttpClient client = HttpClient.newHttpClient();
    private final int port;
    private final Path mounted;
    private final Path data;
    final List<String> said = new ArrayList<>();

    /**
     * Starts it and waits until it says where it is.
     *
     * @param data where the disk is mounted
     * @param mount the command that mounts it there
     * @param before what is done on the disk before the program starts
     */
    Running(Path data, String mount, String before) throws IOException {
      try (ServerSocket free = new ServerSocket(0)) {
        port = free.getLocalPort();
      }
      mounted = data;
      String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
      process =
          new ProcessBuilder(
                  alone(
                      mount
                          + data
                          + "\n"
                          + before
                          + "\nexec "
                          + java
                          + " -XX:TieredStopAtLevel=1 -Xshare:auto -cp '"
                          + System.getProperty("java.class.path")
                          + "' org.grovewright.cli.GrovewrightCommand serve --no-browser --port "
                          + port
                          + " --data "
                          + data))
              .redirectErrorStream(true)
              .start();
      BufferedReader lines =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      String line;
      while ((line = lines.readLine()) != null) {
        said.add(line);
        if (line.startsWith("Press Ctrl+C")) {
          break;
        }
      }
      // The disk as the program sees it.
      this.data = Path.of("/proc", Long.toString(process.pid()), "root", data.toString());
    }

    /** Writes until there is no room. */
    void fill() throws IOException {
      byte[] block = new byte[1024];
      try (OutputStream out = Files.newOutputStream(data.resolve("fill"))) {
        while (true) {
          out.write(block);
        }
      } catch (IOException e) {
        assertThat(Files.getFileStore(data).getUsableSpace()).isLessThan(block.length);
      }
    }

    void makeRoom() throws IOException {
      Files.write(data.resolve("fill"), new byte[0], StandardOpenOption.TRUNCATE_EXISTING);
    }

    /** Makes the disk one that may only be read, as a failing one becomes under a program. */
    void stopWriting() throws Exception {
      String pid = Long.toString(process.pid());
      assertThat(
              run(
                  List.of(
                      "nsenter",
                      "--mount",
                      "--target",
                      pid,
                      "mount",
                      "-o",
                      "remount,abort",
                      mounted.toString())))
          .isTrue();
    }

    HttpResponse<String> ask(String method, String path, String body) throws Exception {
      HttpRequest.Builder request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
      if (!method.equals("GET")) {
        request.header("X-CSRF", get("/api/me").path("csrf").asText());
      }
      request.method(
          method,
          body == null
              ? HttpRequest.BodyPublishers.noBody()
              : HttpRequest.BodyPublishers.ofString(body));
      return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    JsonNode get(String path) throws Exception {
      HttpResponse<String> answer = ask("GET", path, null);
      assertThat(answer.statusCode()).as(path + answer.body()).isEqualTo(200);
      return JSON.readTree(answer.body());
    }

    /** That saving is refused with a code, and that nothing of it is there afterwards. */
    void refuses(String site, String code) throws Exception {
      for (List<String> change :
          List.of(
              List.of("POST", site + "/edits", MOVE),
              List.of("POST", site + "/journal/sync", NOTE),
              List.of("PUT", "/api/me/settings", "{\"theme\":\"dark\"}"))) {
        HttpResponse<String> refused = ask(change.get(0), change.get(1), change.get(2));
        assertThat(refused.statusCode()).as(refused.body()).isEqualTo(503);
        JsonNode answer = JSON.readTree(refused.body());
        assertThat(answer.path("code").asText()).isEqualTo(code);
        assertThat(answer.path("message").asText()).endsWith(".").doesNotContain("Exception");
      }
      assertThat(get(site).path("version").asLong()).isEqualTo(1);
      assertThat(get(site + "/scene?wait=true").path("plants")).hasSize(42);
      assertThat(get(site + "/pages/today").path("days")).isNotEmpty();
      assertThat(get(site + "/journal/sync?since=0").path("entries")).isEmpty();
    }

    @Override
    public void close() throws InterruptedException {
      process.destroy();
      assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }
  }

  /** Runs a command; whether it ended well. */
  private static boolean run(List<String> command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getInputStream().readAllBytes();
    return process.waitFor() == 0;
  }

  private Path data() {
    return folder.resolve("data");
  }

  /** Makes a database with a site in a folder, to be put on the disk. */
  private String seed() throws IOException {
    try (Store store =
        Store.open(new StoreAddress.Folder(folder.resolve("seed")), InstantSource.system())) {
      return "/api/sites/"
          + store
              .sites()
              .create(
                  "Wattlefall",
                  new String(
                      RealDiskTest.class
                          .getResourceAsStream("/org/grovewright/examples/demo.yaml")
                          .readAllBytes(),
                      StandardCharsets.UTF_8),
                  store.accounts().local().author())
              .id();
    }
  }

  private String put() {
    return "cp " + folder.resolve("seed") + "/grovewright.db " + data() + "/";
  }

  @Test
  void aDiskThatFillsUpRefusesEverySaveAndTakesThemAgainOnceThereIsRoom() throws Exception {
    String site = seed();
    try (Running program = new Running(data(), IN_MEMORY, put())) {
      program.fill();
      program.refuses(site, "full");
      program.makeRoom();
      assertThat(program.ask("POST", site + "/edits", MOVE).statusCode()).isEqualTo(200);
      assertThat(program.get(site).path("version").asLong()).isEqualTo(2);
      assertThat(program.said).noneMatch(line -> line.contains("our bug"));
    }
  }

  @Test
  void aDiskThatIsFullWhenTheProgramStartsCanStillBeRead() throws Exception {
    String site = seed();
    String full = "\ndd if=/dev/zero of=" + data() + "/fill bs=1k 2>&1 | tail -n 1";
    try (Running program = new Running(data(), IN_MEMORY, put() + full)) {
      assertThat(program.said).anyMatch(line -> line.contains("is full, so nothing can be saved"));
      assertThat(program.get("/api/me").path("trouble").path("code").asText()).isEqualTo("full");
      assertThat(program.get(site).path("readOnly").asBoolean()).isTrue();
      program.refuses(site, "full");
    }
  }

  @Test
  void aDiskThatMayOnlyBeReadIsReadAndSaysWhyNothingIsSaved() throws Exception {
    String site = seed();
    try (Running program =
        new Running(data(), IN_MEMORY, put() + "\nmount -o remount,ro none " + data())) {
      assertThat(program.said).anyMatch(line -> line.contains("may only be read"));
      assertThat(program.get("/api/me").path("trouble").path("code").asText())
          .isEqualTo("read-only");
      assertThat(program.get(site).path("journalReadOnly").asBoolean()).isTrue();
      program.refuses(site, "read-only");
    }
  }

  /** A disk in a file, since only one of its kind can be stopped under a program that writes. */
  @Test
  void aDiskThatStopsTakingWritesUnderTheProgramRefusesEverySaveUntilANewStart() throws Exception {
    String site = seed();
    Path image = folder.resolve("disk.img");
    try (RandomAccessFile file = new RandomAccessFile(image.toFile(), "rw")) {
      file.setLength(24 << 20);
    }
    String mount = "mount -o loop " + image + " ";
    Assumptions.assumeTrue(
        run(List.of("mke2fs", "-q", "-F", "-t", "ext4", image.toString()))
            && run(alone(mount + data())),
        "skipped: this machine lets nobody mount a disk that is in a file");
    try (Running program = new Running(data(), mount, put() + "\nsync -f " + data())) {
      assertThat(program.ask("PUT", "/api/me/settings", "{\"language\":\"es\"}").statusCode())
          .isEqualTo(200);
      program.stopWriting();
      assertThat(program.ask("POST", site + "/edits", MOVE).body())
          .contains("El disco no dejó leer o escribir")
          .contains("No se ha cambiado nada.");
      program.refuses(site, "unreachable");
      assertThat(program.said).noneMatch(line -> line.contains("our bug"));
    }
    try (Running program = new Running(data(), mount, "")) {
      assertThat(program.get("/api/me").path("settings").path("language").asText()).isEqualTo("es");
      assertThat(program.ask("POST", site + "/edits", MOVE).statusCode()).isEqualTo(200);
      assertThat(program.get(site).path("version").asLong()).isEqualTo(2);
    }
  }

  @Test
  void aDiskWithoutRoomForAFirstStartIsSaidInOneSentence() throws Exception {
    String full = "dd if=/dev/zero of=" + data() + "/fill bs=1k 2>&1 | tail -n 1";
    try (Running program = new Running(data(), IN_MEMORY, full)) {
      assertThat(program.process.waitFor(30, TimeUnit.SECONDS)).isTrue();
      assertThat(program.process.exitValue()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(program.said).noneMatch(line -> line.contains("\tat "));
      assertThat(program.said).anyMatch(line -> line.contains("full") || line.contains("room"));
    }
  }
}
