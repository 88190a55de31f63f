package galena.trade.battery;

import galena.trade.source.DataTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names of packs: a count, a cross, then size and chemistry or the IEC designation. */
final class BatteryNames {
    private static final Pattern PACK = Pattern.compile("(?:(\\d{1,3})\\s*[x×*]\\s*)?(.+)");

    private static final Map<String, String> IEC = Map.of(
            "LR6", "AA-alkaline",
            "HR6", "AA-NiMH",
            "LR03", "AAA-alkaline",
            "HR03", "AAA-NiMH",
            "LR14", "C-alkaline",
            "LR20", "D-alkaline",
            "6LR61", "9V-alkaline",
            "6HR61", "9V-NiMH",
            "6F22", "9V-zinc-carbon",
            "18650", "18650-Li-ion");

    private BatteryNames() {}

    private static final class Held {
        static final Map<String, Cell> CELLS = CellTable.read(DataTable.resource(Battery.class, "cells.csv"));
    }

    static List<String> held() {
        return List.copyOf(Held.CELLS.keySet());
    }

    static BatteryLookup find(String name) {
        Matcher pack = PACK.matcher(name.strip());
        if (!pack.matches()) return new BatteryLookup.Unknown(name, "a battery needs a name", held());
        int count = pack.group(1) == null ? 1 : Integer.parseInt(pack.group(1));
        if (count < 1) return new BatteryLookup.Unknown(name, "a pack has one cell or more", held());
        Cell cell = byKey().get(key(pack.group(2)));
        if (cell != null) return new BatteryLookup.Known(new Battery(count, cell));
        return new BatteryLookup.Unknown(name, "no cell \"" + pack.group(2) + "\" is held", likeliest(pack.group(2)));
    }

    private static Map<String, Cell> byKey() {
        Map<String, Cell> cells = new LinkedHashMap<>();
        Held.CELLS.forEach((name, cell) -> cells.put(key(name), cell));
        IEC.forEach((iec, name) -> cells.putIfAbsent(key(iec), cell(name)));
        return cells;
    }

    private static Cell cell(String name) {
        Cell cell = Held.CELLS.get(name);
        if (cell == null) throw new IllegalStateException("the table of cells lacks " + name);
        return cell;
    }

    private static String key(String name) {
        return name.replaceAll("[\\s_-]", "").toLowerCase(Locale.ROOT);
    }

    /** Cells that share size or chemistry with the wanted name stand first. */
    private static List<String> likeliest(String wanted) {
        List<String> first = new ArrayList<>();
        List<String> rest = new ArrayList<>();
        for (String name : held()) {
            boolean alike = false;
            for (String word : wanted.toLowerCase(Locale.ROOT).split("[\\s_-]+")) {
                alike |= !word.isEmpty()
                        && List.of(name.toLowerCase(Locale.ROOT).split("-")).contains(word);
            }
            (alike ? first : rest).add(name);
        }
        first.addAll(rest);
        return first;
    }
}
