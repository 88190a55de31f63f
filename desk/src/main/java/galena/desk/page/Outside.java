package galena.desk.page;

import galena.build.folder.Build;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What another program has changed in a build file, in words. */
final class Outside {
    private Outside() {}

    /** Each changed value with what stood there and what stands there. */
    static List<String> between(Build before, Build after) {
        Map<String, String> old = values(before), now = values(after);
        List<String> changes = new ArrayList<>();
        now.forEach((path, text) -> {
            if (!old.containsKey(path)) changes.add(path + " came: " + text);
            else if (!Objects.equals(old.get(path), text)) changes.add(path + ": " + old.get(path) + " → " + text);
        });
        old.forEach((path, text) -> {
            if (!now.containsKey(path)) changes.add(path + " went: " + text);
        });
        return changes;
    }

    private static Map<String, String> values(Build build) {
        Map<String, String> values = new LinkedHashMap<>();
        for (Map.Entry<String, Node> entry : build.top().all().entrySet())
            if (entry.getValue() instanceof Scalar s) values.put(entry.getKey(), s.text());
        return values;
    }
}
