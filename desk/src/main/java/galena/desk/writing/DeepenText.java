package galena.desk.writing;

import galena.build.depth.Deepened;
import galena.build.depth.Deepened.Condition;
import galena.build.depth.Deepened.Setting;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import java.util.Map;
import java.util.stream.Collectors;

/** The deepest clean modulation, as a page for a terminal. */
public final class DeepenText {
    private DeepenText() {}

    public static void print(Deepened found, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(found.name(), "below " + Words.percent(found.limit()) + " distortion, 1 kHz");
        if (found.settings().isEmpty()) {
            page.line("No answer: " + found.binding() + ".");
            page.print();
            return;
        }
        Setting best = found.settings().get(0);
        page.heading("Deepest that every condition bears");
        Page.Table table = page.table().folding();
        table.row("depth", Words.percent(best.depth()) + " where it is shallowest");
        table.row("audio level", Words.number(best.level(), Unit.VOLT, 2) + " peak from " + found.source());
        table.row("setting", setting(best, found.loaded()));
        table.row("what binds", found.binding());
        table.end();
        page.heading("At that setting");
        Page.Table rows = page.table();
        rows.row("", "depth", "distortion", "swing", "clean up to");
        for (Condition c : best.conditions()) {
            rows.row(
                    c.name().replace('-', '−'),
                    Words.percent(c.depth()),
                    Words.percent(c.distortion()),
                    Words.number(c.swing(), Unit.HERTZ, 2),
                    c.most().isPresent() ? Words.number(c.most().getAsDouble(), Unit.VOLT, 2) : "");
        }
        rows.end();
        if (found.settings().size() > 1) {
            page.heading("All that was tried");
            Page.Table others = page.table();
            others.row("setting", "depth", "level", "bound by");
            for (Setting s : found.settings()) {
                others.row(
                        setting(s, found.loaded()),
                        Words.percent(s.depth()),
                        Words.number(s.level(), Unit.VOLT, 2),
                        s.binds().replace('-', '−'));
            }
            others.end();
        }
        if (!found.notes().isEmpty()) page.heading("Notes");
        found.notes().forEach(page::line);
        page.print();
    }

    private static String setting(Setting setting, String loaded) {
        if (setting.load().isEmpty()) return presets(setting.presets());
        String load = loaded + " " + Words.number(setting.load().getAsDouble(), Unit.OHM, 2);
        return setting.presets().isEmpty() ? load : presets(setting.presets()) + ", " + load;
    }

    private static String presets(Map<String, Double> presets) {
        if (presets.isEmpty()) return "as set";
        return presets.entrySet().stream()
                .map(e -> e.getKey() + " " + Words.percent(e.getValue()))
                .collect(Collectors.joining(", "));
    }
}
