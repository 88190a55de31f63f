package galena.build.folder;

import galena.build.source.BadInputException;
import galena.build.source.Saver;
import galena.build.source.SourceFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes the calibration that a builder accepts, and takes it away again. */
final class CalibrationFile {
    /** One that was dropped or replaced is kept under this name. */
    private static final String KEPT = ".dropped";

    private CalibrationFile() {}

    static void accept(Path folder, Calibration calibration, List<String> remarks)
            throws BadInputException, IOException {
        Path path = Layout.CALIBRATION.in(folder);
        SourceFile made = SourceFile.of(
                path, Layout.CALIBRATION.place(), text(calibration, remarks).getBytes(StandardCharsets.UTF_8));
        if (Files.exists(path)) {
            Files.copy(path, kept(path), StandardCopyOption.REPLACE_EXISTING);
            Saver.save(SourceFile.read(path, Layout.CALIBRATION.place()), made);
        } else {
            Saver.create(made);
        }
    }

    /** Whether there was one. */
    static boolean drop(Path folder) throws IOException {
        Path path = Layout.CALIBRATION.in(folder);
        if (!Files.exists(path)) return false;
        Files.move(path, kept(path), StandardCopyOption.REPLACE_EXISTING);
        return true;
    }

    private static Path kept(Path path) {
        return path.resolveSibling(path.getFileName() + KEPT);
    }

    private static String text(Calibration calibration, List<String> remarks) {
        StringBuilder text = new StringBuilder();
        for (String remark : remarks)
            text.append("# ").append(remark.replace('\n', ' ')).append('\n');
        text.append("galena: 1\naccepted: ").append(calibration.accepted()).append("\nunknowns:\n");
        for (Calibration.Known known : calibration.unknowns()) {
            text.append("  - {of: \"").append(known.of()).append('"');
            if (!known.between().isEmpty())
                text.append(", between: [")
                        .append(String.join(", ", known.between()))
                        .append(']');
            text.append(", at: ").append(number(known.at())).append(", spread: [");
            text.append(known.spread().stream().map(CalibrationFile::number).collect(Collectors.joining(", ")));
            text.append("]}\n");
        }
        return text.toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.8f", value);
    }
}
