package galena.packet;

import com.fasterxml.jackson.core.type.TypeReference;
import galena.bench.log.Beside;
import galena.build.cache.Cache;
import galena.build.expect.Outlook;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.build.source.Digest;
import galena.build.winding.WindingPlan;
import galena.packet.page.Page;
import galena.packet.page.PageHtml;
import galena.packet.page.PagePdf;
import galena.packet.schematic.Schematic;
import galena.packet.schematic.SchematicSvg;
import galena.packet.sheet.Findings;
import galena.packet.sheet.PacketJson;
import galena.packet.sheet.PartsCsv;
import galena.packet.sheet.Sheets;
import galena.packet.sheet.Summary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a friend needs to build it too, written.
 *
 * @param files in the order in which they were written
 * @param oscillates whether the build does; of one that does not, what can be said all the same was written
 * @param reason why it does not; else empty
 */
public record Packet(List<Path> files, boolean oscillates, String reason) {
    /** Part of the keys of what is kept: a change of method changes them. */
    private static final String RESULTS = "beside 1";

    private static final String DRAWING = "schematic 2";
    private static final String PRINT = "print 1";
    private static final String WINDINGS = "windings 1";

    /** Where a build neither oscillates nor names a carrier its coils are wound for the middle of medium waves, Hz. */
    private static final double USUAL_CARRIER = 1e6;

    public Packet {
        files = List.copyOf(files);
    }

    /**
     * Computes what is not kept in the build's cache and writes {@code packet.html}, {@code packet.pdf}, {@code parts.csv}, {@code
     * packet.json}, {@code summary.txt} and every drawing as SVG. Files of those names are written over.
     *
     * @param folder the build
     * @param into made if it isn't there
     * @param progress told how far it is; may cancel
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException if the disk fails
     */
    public static Packet write(BuildFolder folder, Path into, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        Outlook outlook = Outlook.of(folder, progress);
        Cache cache = Cache.of(folder, Overlay.NONE, List.of());
        List<Beside> results = results(folder, outlook.prediction(), cache, progress);
        progress.at(0.9, "schematic");
        Windings windings = windings(folder, outlook, cache);
        Findings findings = new Findings(
                folder, outlook, results, windings.plans, windings.unwound, schematic(folder, cache, progress));
        List<Path> files = write(findings, into, source -> printed(source, cache), progress);
        String reason = outlook.prediction().running() instanceof Prediction.Silent silent ? silent.reason() : "";
        return new Packet(files, reason.isEmpty(), reason);
    }

    private static double carrier(BuildFolder folder, Outlook outlook) {
        return folder.build()
                .intent()
                .carrier()
                .map(c -> c.value())
                .orElseGet(() -> outlook.prediction().running() instanceof Prediction.Oscillation o
                        ? o.carrier().value()
                        : USUAL_CARRIER);
    }

    /** Plans of coils, and the coils without one. */
    record Windings(List<WindingPlan> plans, List<String> unwound) {}

    private static Windings windings(BuildFolder folder, Outlook outlook, Cache cache) {
        Cache.Slot<Windings> slot = new Cache.Slot<>("windings", WINDINGS, new TypeReference<>() {});
        Optional<Windings> kept = cache.kept(slot);
        if (kept.isPresent()) return kept.get();
        List<String> unwound = new ArrayList<>();
        Windings made = new Windings(WindingPlan.of(folder.build(), carrier(folder, outlook), unwound), unwound);
        cache.keep(slot, made);
        return made;
    }

    private static List<Beside> results(BuildFolder folder, Prediction prediction, Cache cache, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        Path log = Layout.LOG.in(folder.folder());
        if (folder.log().isEmpty()) return List.of();
        String read = RESULTS + " " + Digest.of(Files.readAllBytes(log));
        Cache.Slot<List<Beside>> slot = new Cache.Slot<>("results", read, new TypeReference<>() {});
        List<Beside> kept = cache.kept(slot).orElse(List.of());
        if (!kept.isEmpty()) return kept;
        List<Beside> made = Beside.of(folder, prediction, progress);
        cache.keep(slot, made);
        return made;
    }

    private static String schematic(BuildFolder folder, Cache cache, Progress progress) {
        Cache.Slot<String> slot = new Cache.Slot<>("schematic", DRAWING, new TypeReference<>() {});
        String kept = cache.kept(slot).orElse("");
        if (!kept.isEmpty()) return kept;
        String drawn = SchematicSvg.draw(Schematic.of(folder.build(), progress::cancelled));
        cache.keep(slot, drawn);
        return drawn;
    }

    /** Prints a page. */
    interface Printing {
        byte[] print(String source) throws IOException;
    }

    private static byte[] printed(String source, Cache cache) throws IOException {
        String text = PRINT + " " + Digest.of(source.getBytes(StandardCharsets.UTF_8));
        Cache.Slot<byte[]> slot = new Cache.Slot<>("print", text, new TypeReference<>() {});
        byte[] kept = cache.kept(slot).orElse(new byte[0]);
        if (kept.length > 0) return kept;
        byte[] made = PagePdf.of(source);
        cache.keep(slot, made);
        return made;
    }

    /** Writes the packet of what has been computed already. */
    static List<Path> write(Findings findings, Path into, Printing printing, Progress progress) throws IOException {
        Files.createDirectories(into);
        List<Path> written = new ArrayList<>();
        Page page = Sheets.page(findings);
        written.add(text(into.resolve("packet.html"), PageHtml.of(page)));
        progress.at(0.95, "printing");
        written.add(Files.write(into.resolve("packet.pdf"), printing.print(PagePdf.source(page))));
        for (Page.Section section : page.sections())
            for (Page.Block block : section.blocks())
                if (block instanceof Page.Drawing d) written.add(text(into.resolve(d.name() + ".svg"), d.svg()));
        written.add(text(into.resolve("parts.csv"), PartsCsv.of(findings)));
        written.add(text(into.resolve("packet.json"), PacketJson.of(findings)));
        written.add(text(into.resolve("summary.txt"), Summary.of(findings)));
        progress.at(1, "done");
        return written;
    }

    private static Path text(Path file, String text) throws IOException {
        return Files.writeString(file, text, StandardCharsets.UTF_8);
    }
}
