package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.BuildFolder;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;

/** The loop on the demo build as somebody at a browser goes through it, mostly by keyboard. */
final class BrowserTest {
    private static Chromium browser;

    @TempDir
    private Path folder;

    private OpenedDemo demo;

    @BeforeAll
    static void launch() {
        browser = new Chromium();
    }

    @AfterAll
    static void quit() {
        browser.close();
    }

    @BeforeEach
    void open() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        keepDrawing();
        demo = OpenedDemo.in(folder);
        browser.open(demo);
        browser.until("the schematic", () -> browser.script("return document.querySelectorAll('.part').length > 20"));
    }

    /** The demo's drawing as placed once; the search for it is tested where it lives. */
    private void keepDrawing() throws Exception {
        Path cache = Files.createDirectories(folder.resolve(".cache"));
        String key = Drawn.key(BuildFolder.open(folder).build());
        try (InputStream in = BrowserTest.class.getResourceAsStream("demo-schematic.svg")) {
            Files.copy(in, cache.resolve(Drawn.file(key)));
        }
    }

    @AfterEach
    void close() {
        browser.leave(demo, "status of 422");
    }

    private String file() {
        try {
            return Files.readString(folder.resolve("build.yaml"), StandardCharsets.UTF_8);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    private void pick(String part) {
        browser.script("document.querySelector(`[data-part=\"${arguments[0]}\"]`).focus()", part);
        browser.press(Keys.ENTER);
        browser.until("the note", () -> browser.text("#note h2").startsWith(part));
    }

    private void carrier(String words) {
        browser.until("the carrier at " + words, () -> browser.text("#carrier").startsWith(words));
    }

    @Test
    void a_trimmer_is_turned_in_pencil_written_in_and_undone() {
        carrier("1000.16 kHz");
        String before = file();
        pick("Ct");
        browser.script("document.querySelector('[data-rule=Ct]').focus()");
        for (int k = 0; k < 3; k++) browser.press(Keys.ARROW_RIGHT);
        carrier("997.0");
        assertThat(file()).isEqualTo(before);
        assertThat(browser.text("#deed")).contains("in pencil: 63 %");
        assertThat(browser.text("#pencil")).contains("not written");
        browser.press(Keys.ENTER);
        browser.until("ink", () -> file().contains("set: 63 %"));
        assertThat(file()).isEqualTo(before.replace("set: 60 %", "set: 63 %"));
        browser.until("no pencil", () -> browser.text("#deed").isEmpty());
        browser.script("document.querySelector('#schematic [tabindex=\"0\"]').focus()");
        browser.press(Keys.chord(Keys.CONTROL, "z"));
        browser.until("undone", () -> file().equals(before));
        carrier("1000.16 kHz");
        browser.press(Keys.chord(Keys.CONTROL, "y"));
        browser.until("redone", () -> file().contains("set: 63 %"));
        browser.until("the history", () -> browser.text("#history").contains("60 % → 63 % (redone)"));
    }

    @Test
    void a_value_is_typed_stepped_and_refused_with_its_remedy() {
        pick("Rs");
        assertThat(browser.text("#note .reason")).isEqualTo("starves the drain so that it clips little");
        browser.until("what it does", () -> browser.text("#moves").contains("resistance"));
        browser.type("[data-key='parts.Rs.resistor']", "3300 pounds");
        browser.until("a refusal", () -> browser.text("#note .refusal").contains("resistance"));
        assertThat(file()).contains("Rs:  {resistor: 3.3 kΩ");
        browser.type("[data-key='parts.Rs.resistor']", "2k7");
        browser.until("written", () -> file().contains("Rs:  {resistor: 2k7"));
        browser.until("the value in the drawing", () -> browser.text("[data-part=Rs] .value")
                .equals("2k7"));
        browser.until("the next step", () -> browser.find("[data-key='parts.Rs.resistor+']")
                .getAttribute("title")
                .equals("3 kΩ"));
        browser.push("[data-key='parts.Rs.resistor+']");
        browser.until("the next preferred value", () -> file().contains("Rs:  {resistor: 3 kΩ"));
    }

    @Test
    void what_comes_from_elsewhere_is_shown_and_two_pages_stay_in_step() throws IOException {
        String first = browser.driver.getWindowHandle();
        browser.driver.switchTo().newWindow(WindowType.TAB);
        browser.driver.get("http://127.0.0.1:" + demo.server.port() + "/");
        browser.until("a ready page", () -> browser.script("return document.documentElement.dataset.ready === 'true'"));
        browser.until("the schematic", () -> browser.script("return document.querySelectorAll('.part').length > 20"));
        pick("Pm");
        browser.type("[data-key='set']", "40 %");
        browser.until("written", () -> file().contains("set: 40 %"));
        browser.driver.close();
        browser.driver.switchTo().window(first);
        browser.until("the other page's edit", () -> browser.text("#settings").contains("Pm 40 %"));
        Files.writeString(folder.resolve("build.yaml"), file().replace("coil: 100 µH", "coil: 102 µH"));
        browser.until("the other program's edit", () -> browser.text("#news").contains("100 µH → 102 µH"));
        browser.until("its value", () -> browser.text("[data-part=Lt] .value").equals("102 µH"));
    }

    @Test
    void long_work_survives_a_reload_and_leaves_its_slip() {
        browser.push("[data-work=align] button");
        browser.driver.navigate().refresh();
        browser.until(
                "the answer", () -> browser.text("[data-work=align] .slip").contains("Ct sets the carrier"));
        browser.until("the mark", () -> browser.text("#steps").contains("align: done"));
        browser.push("[data-work=spread] button");
        browser.until("work", () -> browser.text("[data-work=spread]").contains("Stop"));
        browser.script(
                "[...document.querySelectorAll('[data-work=spread] button')].find(b => b.textContent === 'Stop').click()");
        browser.until("the end", () -> browser.text("[data-work=spread]").contains("stopped"));
        assertThat(Axe.findings(browser, "with a slip")).isEmpty();
    }

    @Test
    void a_capture_is_dropped_and_a_reading_noted() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),CH1 (V)\n");
        for (int k = 0; k < 4000; k++)
            text.append(String.format(
                    java.util.Locale.ROOT, "%.9f,%.6f%n", k * 50e-9, Math.sin(2 * Math.PI * 999e3 * k * 50e-9)));
        Path capture = Files.writeString(folder.resolve("tone.csv"), text);
        browser.driver.findElement(org.openqa.selenium.By.id("captures")).sendKeys(capture.toString());
        browser.until(
                "a report",
                () -> browser.text("#captured").contains("carrier")
                        && browser.text("#captured").contains("999"));
        browser.script("document.querySelector('#bench form select').value = 'carrier'");
        browser.type("#bench form input", "999.2 kHz ± 50 Hz");
        browser.until("one reading", () -> browser.text("#steps").contains("1 reading"));
        assertThat(folder.resolve("bench/log.yaml")).exists();
    }

    @Test
    void fits_every_width_and_pleases_the_accessibility_engine_on_light_and_dark_paper() throws Exception {
        browser.until("a whole picture", () -> browser.text("#window").contains("over tolerances"));
        pick("Ct");
        browser.script("document.querySelector('[data-rule=Ct]').focus()");
        browser.press(Keys.ARROW_RIGHT);
        carrier("999.1");
        List<String> found = new ArrayList<>();
        for (String paper : List.of("light", "dark")) {
            browser.script("document.documentElement.dataset.paper = arguments[0]", paper);
            for (int width : new int[] {360, 1280, 2560}) {
                browser.size(width, 900);
                TimeUnit.MILLISECONDS.sleep(150); // the browser lays the page out anew
                assertThat(browser.script("return document.documentElement.scrollWidth <= innerWidth"))
                        .as("no sideways scrolling at " + width)
                        .isEqualTo(true);
                found.addAll(Axe.findings(browser, paper + " at " + width));
            }
        }
        assertThat(found).isEmpty();
    }

    @Test
    void honours_the_wish_for_less_motion_and_the_system_s_dark_paper() {
        List<Map<String, String>> wishes = List.of(
                Map.of("name", "prefers-reduced-motion", "value", "reduce"),
                Map.of("name", "prefers-color-scheme", "value", "dark"));
        browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", wishes));
        try {
            browser.script("localStorage.clear()");
            browser.driver.navigate().refresh();
            browser.until(
                    "dark paper", () -> browser.script("return document.documentElement.dataset.paper === 'dark'"));
            assertThat(browser.script("return getComputedStyle(document.documentElement).scrollBehavior"))
                    .isEqualTo("auto");
            assertThat(browser.script("return document.getAnimations().length")).isEqualTo(0L);
        } finally {
            browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
        }
    }

    @Test
    void asks_nobody_else_for_anything() {
        browser.until("a whole picture", () -> browser.text("#window").contains("over tolerances"));
        assertThat(browser.script("return performance.getEntriesByType('resource').map(e => new URL(e.name).host)"
                        + ".filter(host => host !== location.host)"))
                .isEqualTo(List.of());
        assertThat(browser.script("return document.cookie"))
                .as("no script can read the token")
                .isEqualTo("");
        assertThat(browser.script("return location.search"))
                .as("nor does the address keep it")
                .isEqualTo("");
    }
}
