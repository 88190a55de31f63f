package galena.desk.page;

import galena.desk.server.PageServer;
import galena.desk.server.Wire;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** The demo build, opened and served. */
final class OpenedDemo implements AutoCloseable {
    final Path folder;
    final List<Exception> faults = new CopyOnWriteArrayList<>();
    final Shelf shelf;
    final PageServer server;

    private OpenedDemo(Path folder) throws Exception {
        this.folder = folder;
        Clock clock = Clock.fixed(Instant.parse("2026-11-25T18:00:00Z"), ZoneOffset.UTC);
        shelf = Shelf.open(folder, clock, faults::add);
        server = PageServer.start(0, shelf, faults::add);
    }

    static OpenedDemo in(Path folder) throws Exception {
        Path file = folder.resolve("build.yaml");
        if (!Files.exists(file)) lay(file);
        return new OpenedDemo(folder);
    }

    /** A folder as it is, also one without a build. */
    static OpenedDemo as(Path folder) throws Exception {
        return new OpenedDemo(folder);
    }

    static void lay(Path file) throws IOException {
        try (InputStream demo = Notebook.class.getResourceAsStream("/galena/demo/build.yaml")) {
            Files.copy(demo, file);
        }
    }

    String cookie() {
        return "galena-" + server.port() + "="
                + server.address().substring(server.address().indexOf("key=") + 4);
    }

    /** A request as the page sends it. */
    Wire page() {
        return Wire.to(server.port()).own(cookie());
    }

    @Override
    public void close() {
        server.close();
        shelf.close();
    }
}
