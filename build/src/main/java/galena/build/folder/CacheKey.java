package galena.build.folder;

import galena.build.source.Digest;
import galena.trade.device.Device;
import galena.trade.device.Lookup;
import galena.trade.device.Printed;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * The key of a prediction: SHA-256 over everything that it depends on, so that an equal key means an equal prediction. These
 * are the text of the build, the drawer, what the library holds of the devices named, the overlay, and the program.
 */
public final class CacheKey {
    private CacheKey() {}

    /**
     * @param folder as opened
     * @param overlay what is laid over
     * @param program the version of the program, and of the kind of result if several share a cache
     */
    public static String of(BuildFolder folder, Overlay overlay, String program) throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("program " + program);
        lines.add("build " + folder.build().file().digest());
        Path drawer = Layout.DRAWER.in(folder.folder());
        lines.add("drawer " + (Files.exists(drawer) ? Digest.of(Files.readAllBytes(drawer)) : "none"));
        folder.build().parts().values().stream()
                .flatMap(part -> part.type().stream())
                .distinct()
                .forEach(type -> device(folder.build(), type, lines));
        lines.add("overlay " + overlay);
        return Digest.of(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    private static void device(Build build, String type, List<String> lines) {
        if (!(build.devices().find(type) instanceof Lookup.Known known)) return;
        Device device = known.device();
        lines.add("device " + device.type() + " " + device.family());
        for (Printed row : device.sheet().rows()) // conditions in a fixed order: maps of the library have none
        lines.add(row.quantity() + " " + row.min() + row.typ() + row.max() + new TreeMap<>(row.at()));
    }
}
