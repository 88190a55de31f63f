package galena.packet.sheet;

import galena.build.folder.Build;
import galena.build.source.Place;
import java.util.List;

/** The remark that a builder wrote at the end of a line of the build file. */
final class Remark {
    private Remark() {}

    static String beside(Build build, Place place) {
        List<String> lines = build.file().text().lines().toList();
        if (place.line() < 1 || place.line() > lines.size()) return "";
        String line = lines.get(place.line() - 1);
        int from = line.lastIndexOf('}');
        int at = line.indexOf(" #", Math.max(0, from));
        return at < 0 ? "" : line.substring(at + 2).strip();
    }
}
