package galena.desk.page;

import galena.build.folder.Build;
import galena.build.folder.Layout;
import galena.build.folder.PartEntry;
import galena.build.source.Digest;
import galena.packet.schematic.AnnotatedSvg;
import galena.packet.schematic.Schematic;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Consumer;

/**
 * The schematic of the build. Placing it takes seconds, so it is done in the background and kept in the cache by what it shows: parts,
 * kinds and nets; those of the patterns and of the demo come with the program. A changed value leaves the drawing where it is; the page writes the value into it.
 */
final class Drawn implements AutoCloseable {
    /** Part of every key: another manner of drawing gives other drawings. */
    private static final String MANNER = "annotated 1";

    private final Path cache;
    private final Runnable ready;
    private final Consumer<Exception> faults;
    /** Of one thread, which the drawing's own parallel search keeps to: the carrier's solver needs the other cores. */
    private final ForkJoinPool drawing = new ForkJoinPool(1);

    private volatile String wanted = "";
    private volatile Optional<String> svg = Optional.empty();

    Drawn(Path folder, Runnable ready, Consumer<Exception> faults) {
        cache = Layout.CACHE.in(folder);
        this.ready = ready;
        this.faults = faults;
    }

    /** The drawing of the build last asked for; empty while it is being placed. */
    Optional<String> svg() {
        return svg;
    }

    /** Asks for a build's drawing. */
    synchronized void of(Build build) {
        String key = key(build);
        if (key.equals(wanted)) return;
        wanted = key;
        svg = Optional.empty();
        drawing.execute(() -> draw(build, key));
    }

    private void draw(Build build, String key) {
        try {
            Path file = cache.resolve(file(key));
            Optional<String> known = ready(build);
            String text;
            if (known.isPresent()) {
                text = known.get();
            } else if (Files.exists(file)) {
                text = Files.readString(file, StandardCharsets.UTF_8);
            } else {
                text = AnnotatedSvg.draw(Schematic.of(build, () -> !key.equals(wanted)));
                Files.createDirectories(cache);
                Path half = Files.createTempFile(cache, "schematic", ".half");
                Files.writeString(half, text, StandardCharsets.UTF_8);
                Files.move(half, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            }
            synchronized (this) {
                if (!key.equals(wanted)) return;
                svg = Optional.of(text);
            }
            ready.run();
        } catch (CancellationException other) {
            return; // another build is asked for by now
        } catch (IOException | RuntimeException fault) {
            faults.accept(fault);
        }
    }

    /** The drawing of a pattern or of the demo, which are placed already; empty for any other build. */
    static Optional<String> ready(Build build) throws IOException {
        try (InputStream in = Drawn.class.getResourceAsStream("/galena/drawn/" + file(key(build)))) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        }
    }

    /** The name of the file that a drawing is kept in. */
    static String file(String key) {
        return "schematic-" + key.substring(0, 16) + ".svg";
    }

    /** What a drawing is kept under. */
    static String key(Build build) {
        StringBuilder shown = new StringBuilder(MANNER);
        for (PartEntry part : build.parts().values())
            shown.append('\n')
                    .append(part.name())
                    .append(' ')
                    .append(part.kind())
                    .append(' ')
                    .append(part.pins());
        build.supply()
                .ifPresent(s -> shown.append('\n').append(s.plus()).append(' ').append(s.minus()));
        build.points()
                .values()
                .forEach(p -> shown.append('\n').append(p.name()).append(' ').append(p.at()));
        build.couplings().forEach(c -> shown.append('\n')
                .append(c.first())
                .append(' ')
                .append(c.second())
                .append(' ')
                .append(c.k().text()));
        return Digest.of(shown.toString().getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() {
        wanted = "closed";
        drawing.shutdownNow();
    }
}
