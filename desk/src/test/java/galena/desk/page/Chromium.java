package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.Keys;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/** The distribution's Chromium without a screen. Nothing is downloaded: browser and driver stand at their usual places or the test says so. */
final class Chromium implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final List<String> BROWSERS =
            List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
    private static final List<String> DRIVERS = List.of("/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver");

    final ChromeDriver driver;

    Chromium() {
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File(found(DRIVERS, "chromium-driver")))
                .usingAnyFreePort()
                .build();
        ChromeOptions options = new ChromeOptions();
        options.setBinary(found(BROWSERS, "chromium"));
        options.addArguments(
                "--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars");
        driver = new ChromeDriver(service, options);
        size(1280, 800);
    }

    private static String found(List<String> places, String packet) {
        return places.stream()
                .filter(place -> Files.isExecutable(Path.of(place)))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalStateException("the browser test needs " + packet + "; ./check installs it"));
    }

    void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    WebElement find(String css) {
        return until(css, () -> driver.findElements(By.cssSelector(css)).stream()
                .findFirst()
                .orElse(null));
    }

    String text(String css) {
        return String.valueOf(script("return document.querySelector(arguments[0])?.textContent ?? ''", css));
    }

    Object script(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** Keys to whatever has the focus; it may be drawn anew while it is looked for. */
    void press(CharSequence... keys) {
        until("a place for keys", () -> {
            driver.switchTo().activeElement().sendKeys(keys);
            return true;
        });
    }

    /** Pushes a button by keyboard. */
    void push(String css) {
        find(css);
        script("document.querySelector(arguments[0]).focus()", css);
        press(Keys.ENTER);
    }

    /** Types into a field in place of what stands there, and leaves it with Enter. */
    void type(String css, String text) {
        write(css, text + Keys.ENTER);
    }

    /** Types into a field in place of what stands there, and stays in it. */
    void write(String css, String text) {
        until("a field for \"" + text + "\"", () -> {
            find(css).sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
            return true;
        });
    }

    /** Waits until something is there and true. */
    <T> T until(String what, Supplier<T> look) {
        return until(what, PATIENCE, look);
    }

    /** The same for what may take longer. */
    <T> T until(String what, Duration patience, Supplier<T> look) {
        long end = System.nanoTime() + patience.toNanos();
        while (System.nanoTime() < end) {
            try {
                T found = look.get();
                if (found != null && !Objects.equals(found, false)) return found;
                Thread.sleep(30);
            } catch (StaleElementReferenceException | ElementNotInteractableException redrawn) {
                // it was drawn anew while it was looked at, or is not laid out yet
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }
        throw new AssertionError("waited in vain for: " + what + "\n" + text("#troubles") + "\n" + complaints());
    }

    /** Opens a page and waits until it is ready. */
    void open(OpenedDemo page) {
        size(1280, 800);
        driver.get(page.server.address());
        ready();
    }

    void ready() {
        until("a ready page", () -> script("return document.documentElement.dataset.ready === 'true'"));
    }

    /**
     * Leaves a page before its server goes; nobody may have complained.
     *
     * @param told refusals that are told to the builder, not to the console
     */
    void leave(OpenedDemo page, String... told) {
        driver.get("about:blank");
        List<String> complaints = complaints().stream()
                .filter(c -> Arrays.stream(told).noneMatch(c::contains))
                .toList();
        page.close();
        assertThat(complaints).isEmpty();
        assertThat(page.faults).isEmpty();
    }

    /** What the browser has complained of so far. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::getMessage)
                .toList();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
