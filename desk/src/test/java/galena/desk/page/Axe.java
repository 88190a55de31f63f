package galena.desk.page;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The accessibility engine axe-core, put in by the driver, as the page itself would refuse it. */
final class Axe {
    private Axe() {}

    /** What it finds wrong, each with its element. */
    static List<String> findings(Chromium browser, String where) {
        try (InputStream in = Axe.class.getResourceAsStream("/axe.min.js")) {
            if (in == null) throw new AssertionError("axe-core is not on the path");
            browser.script("if (!window.axe) { " + new String(in.readAllBytes(), StandardCharsets.UTF_8) + " }");
        } catch (IOException unreadable) {
            throw new AssertionError(unreadable);
        }
        Object found = browser.driver.executeAsyncScript(
                "const done = arguments[0]; axe.run(document, {resultTypes: ['violations']}).then(r => done(r.violations.map(v =>"
                        + " v.id + ': ' + v.help + ' ' + v.nodes.map(n => n.target.join(' ') + ' ' + (n.any[0]?.message ?? '')).join(' | '))))");
        return ((List<?>) found).stream().map(f -> where + " " + f).toList();
    }
}
