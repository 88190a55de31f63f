package galena.packet;

import galena.build.expect.Expected;
import galena.build.folder.BuildFolder;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.packet.page.Page;
import galena.packet.page.PageHtml;
import galena.packet.page.PagePdf;
import galena.packet.schematic.Schematic;
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

/** Writes what a friend needs to build it too. */
public final class Packet {
    private Packet() {}

    /**
     * Computes what the prediction leaves open and writes the packet: {@code packet.html}, {@code packet.pdf}, {@code parts.csv},
     * {@code packet.json}, {@code summary.txt} and every drawing as SVG. Files of those names are written over.
     *
     * @param folder the build
     * @param prediction of that build with nothing laid over it
     * @param into made if it isn't there
     * @param progress told how far it is; may cancel
     * @return the files written
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException if the disk fails
     */
    public static List<Path> write(BuildFolder folder, Prediction prediction, Path into, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        progress.at(0.02, "readings to expect");
        Expected expected = Expected.of(folder, prediction, progress);
        progress.at(0.8, "schematic");
        return write(
                new Findings(folder, prediction, expected, Schematic.of(folder.build(), progress::cancelled)),
                into,
                progress);
    }

    /** Writes the packet of what has been computed already. */
    static List<Path> write(Findings findings, Path into, Progress progress) throws IOException {
        Files.createDirectories(into);
        List<Path> written = new ArrayList<>();
        Page page = Sheets.page(findings);
        written.add(text(into.resolve("packet.html"), PageHtml.of(page)));
        progress.at(0.9, "printing");
        written.add(Files.write(into.resolve("packet.pdf"), PagePdf.of(page)));
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
