package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import galena.bench.invented.InventedBench;
import galena.build.folder.BuildFolder;
import galena.build.pattern.Pattern;
import galena.build.predict.Progress;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Round the loop in a browser, by keyboard: begin, propose, align, listen, lay captures over the prediction, reconcile and take it back. */
final class LoopTest {
    private static final Duration LONG_WORK = Duration.ofMinutes(5);

    private static Chromium browser;

    @TempDir
    private Path folder;

    private OpenedDemo page;

    @BeforeAll
    static void launch() {
        browser = new Chromium();
    }

    @AfterAll
    static void quit() {
        browser.close();
    }

    private void open() throws Exception {
        page = OpenedDemo.as(folder);
        browser.open(page);
    }

    @AfterEach
    void close() {
        browser.leave(page, "status of 422", "status of 409");
    }

    private String file() {
        try {
            return Files.readString(folder.resolve("build.yaml"), StandardCharsets.UTF_8);
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    /** Asks, waits for the answer, and goes on with its slip. */
    private static String asked(String work) {
        browser.push("[data-work=" + work + "] .work button");
        browser.until(
                "the answer under " + work,
                LONG_WORK,
                () -> browser.script("return !!document.querySelector(`[data-work=${arguments[0]}] .slip`)", work));
        return browser.text("[data-work=" + work + "] .slip");
    }

    @Test
    void from_an_empty_folder_to_a_heard_programme() throws Exception {
        open();
        List<String> found = new ArrayList<>();
        for (int width : new int[] {360, 1280, 2560}) {
            browser.size(width, 900);
            assertThat(browser.script("return document.documentElement.scrollWidth <= innerWidth"))
                    .isEqualTo(true);
            found.addAll(Axe.findings(browser, "begin at " + width));
        }
        browser.size(1280, 800);
        browser.script("document.querySelector('#wish-carrier').focus()");
        browser.type("#wish-carrier", "828 parsecs");
        browser.until("a refusal", () -> browser.text("#refusal").contains("frequency"));
        assertThat(folder).isEmptyDirectory();
        browser.type("#wish-carrier", "828 kHz");
        browser.until("the build", () -> browser.text("#carrier").contains("kHz"));
        assertThat(file()).contains("name: Tram-shelter sender");
        assertThat(asked("align")).contains("Ct sets the carrier: it covers");
        assertThat(asked("listen")).contains("A listener gets").contains("Mind your hearing");
        browser.until("the loop", () -> browser.text("#steps").contains("listen: done"));
        browser.push(".player button");
        browser.until("sound", () -> browser.script("return +document.querySelector('.player').dataset.at > 0.3"));
        assertThat(browser.script("return document.querySelector('.player').dataset.side"))
                .isEqualTo("A");
        double before = number("return +document.querySelector('.player').dataset.at");
        browser.script("document.querySelector('.player [type=radio]').focus()");
        browser.press(Keys.ARROW_DOWN);
        browser.until(
                "the other side",
                () -> browser.script("return document.querySelector('.player').dataset.side === 'B'"));
        assertThat(number("return +document.querySelector('.player').dataset.at"))
                .as("it goes on from where it was")
                .isBetween(before, before + 5);
        browser.push(".player button");
        browser.until(
                "a pause", () -> browser.script("return document.querySelector('.player').dataset.state === 'still'"));
        found.addAll(Axe.findings(browser, "with a player"));
        assertThat(found).isEmpty();
    }

    @Test
    @Tag("long")
    void another_channel_s_values_are_worked_out_taken_in_and_heard() throws Exception {
        open();
        browser.script(
                "const i = document.querySelector('#wish-supply'); i.value = '9V-alkaline'; i.dispatchEvent(new Event('input'))");
        browser.type("#wish-carrier", "1341 kHz");
        browser.until("the proposal", LONG_WORK, () -> browser.text("[data-work=propose] .slip")
                .contains("Take it"));
        browser.push("[data-work=propose] .slip button");
        browser.until("its carrier", () -> browser.text("#carrier").startsWith("134"));
        browser.until("all of the intent", () -> browser.text("#steps").contains("predict: done"));
        assertThat(browser.text("[data-part=supply] .value")).isEqualTo("9V-alkaline");
        assertThat(asked("listen")).contains("A listener gets");
    }

    private static double number(String script) {
        return ((Number) browser.script(script)).doubleValue();
    }

    @Test
    void captures_lie_over_the_prediction_and_a_calibration_is_accepted_and_taken_away() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        InventedBench.lay(BuildFolder.open(folder), Progress.SILENT);
        open();
        browser.until("the captures", () -> browser.text("#kept").contains("invented-carrier-TP1.csv"));
        browser.push("#kept button");
        browser.until(
                "the trace", () -> browser.script("return document.querySelectorAll('.over .read').length > 200"));
        assertThat(browser.text("#captured .strips")).contains("amplitude").contains("653 mV");
        assertThat(asked("compare")).contains("readings that can be judged fit the prediction");
        assertThat(asked("reconcile")).contains("What was learnt");
        browser.until("a way to leave it", () -> browser.text("[data-work=reconcile] .slip")
                .contains("Leave it"));
        browser.push("[data-work=reconcile] .slip button");
        browser.until("no slip", () -> browser.script("return !document.querySelector('[data-work=reconcile] .slip')"));
        assertThat(folder.resolve("calibration.yaml")).doesNotExist();
        asked("reconcile");
        browser.push("[data-work=accept] .work button");
        browser.until("the calibration", () -> browser.text("#calibration").contains("A calibration is accepted"));
        browser.until(
                "predictions that rest on it", () -> browser.text("#carrier").startsWith("97"));
        assertThat(folder.resolve("calibration.yaml")).exists();
        assertThat(Axe.findings(browser, "reconciled")).isEmpty();
        browser.push("#calibration button");
        browser.until("predictions as before", () -> browser.text("#carrier").startsWith("1000"));
        assertThat(folder.resolve("calibration.yaml")).doesNotExist();
        assertThat(browser.script("return document.activeElement.closest('#reconcile') !== null"))
                .as("the focus stays where it was worked")
                .isEqualTo(true);
    }

    @Test
    void a_proposal_is_worked_on_in_the_background_and_can_be_stopped() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        open();
        browser.push("[data-work=propose] .work button");
        browser.until("work", () -> browser.text("[data-work=propose]").contains("Stop"));
        browser.driver.navigate().refresh();
        browser.ready();
        browser.until("still at it", () -> browser.text("[data-work=propose]").contains("Stop"));
        browser.push("[data-work=propose] .work button");
        browser.until("the end", () -> browser.text("[data-work=propose]").contains("stopped"));
        assertThat(folder.resolve("proposed")).doesNotExist();
    }

    @Test
    void another_circuit_that_is_taken_in_is_drawn_in_the_place_of_the_old() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        Pattern.write("emitter-modulated", folder.resolve("proposed"));
        open();
        browser.until("the schematic", () -> browser.script("return document.querySelectorAll('.part').length > 30"));
        browser.script("import('/page/api.js').then(api => api.post('/api/take', {build: 'proposed'}))");
        browser.until(
                "the other schematic", () -> browser.script("return document.querySelectorAll('.part').length < 28"));
        browser.until("its name", () -> browser.text("#name").equals("Cellar sender"));
        browser.until("something to undo", () -> browser.script("return !document.querySelector('#undo').disabled"));
        browser.push("#undo");
        browser.until("the old one", () -> browser.script("return document.querySelectorAll('.part').length > 30"));
    }

    @Test
    @Tag("long")
    void a_proposal_is_taken_in_as_one_edit_and_opened_beside() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        String own = file();
        Files.writeString(folder.resolve("build.yaml"), own.replace("runtime: 40 h", "runtime: 3000 h"));
        String asked = file();
        open();
        assertThat(asked("propose")).contains("copies meet every line");
        browser.push("[data-work=propose] .slip button");
        browser.until("the proposal in the file", () -> !file().equals(asked));
        browser.until("something to undo", () -> browser.script("return !document.querySelector('#undo').disabled"));
        browser.push("#undo");
        browser.until("what was there", () -> file().equals(asked));
        browser.push("#beside button");
        browser.until("the other build", () -> browser.text("#folder").startsWith("proposed/"));
        browser.push("#beside button");
        browser.until("the own build", () -> !browser.text("#folder").startsWith("proposed/"));
    }

    @Test
    void of_two_changes_of_one_value_the_builder_says_which_stands() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        open();
        browser.until("the schematic", () -> browser.script("return document.querySelectorAll('.part').length > 20"));
        String field = "[data-key='parts.Rs.resistor']";
        for (String choice : List.of("mine", "theirs")) {
            browser.script("document.querySelector('[data-part=Rs]').focus()");
            browser.press(Keys.ENTER);
            browser.until("the note", () -> browser.text("#note h2").startsWith("Rs"));
            String before = choice.equals("mine") ? "3.3 kΩ" : "2.7 kΩ";
            browser.until(
                    "its value", () -> browser.find(field).getAttribute("value").equals(before));
            browser.write(field, choice.equals("mine") ? "2.7 kΩ" : "2.2 kΩ");
            Files.writeString(folder.resolve("build.yaml"), file().replace("resistor: " + before, "resistor: 3.6 kΩ"));
            browser.until("news of it", () -> browser.text("#news").contains("3.6 kΩ"));
            assertThat(browser.find(field).getAttribute("value"))
                    .as("what was typed is kept")
                    .startsWith("2.");
            browser.press(Keys.ENTER);
            browser.until("the question", () -> browser.script("return document.querySelector('#conflict').open"));
            assertThat(browser.text("#conflict-theirs")).isEqualTo("3.6 kΩ");
            assertThat(file()).contains("Rs:  {resistor: 3.6 kΩ");
            if (choice.equals("mine"))
                assertThat(Axe.findings(browser, "asked")).isEmpty();
            browser.push("#conflict [value=" + choice + "]");
            String stands = choice.equals("mine") ? "2.7 kΩ" : "3.6 kΩ";
            browser.until("the choice", () -> file().contains("Rs:  {resistor: " + stands));
            browser.until(
                    "it in the field",
                    () -> browser.find(field).getAttribute("value").equals(stands));
            assertThat(browser.script("return document.activeElement.dataset.key"))
                    .isEqualTo("parts.Rs.resistor");
        }
    }
}
