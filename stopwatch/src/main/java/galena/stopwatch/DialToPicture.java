package galena.stopwatch;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * How long the page takes from a movement of the dial to the picture, measured in the browser by its own clock: from the event on the
 * rule to the frame after the pictures of that setting were drawn. Arguments: the program's jar and a build with a trimmer Ct.
 */
public final class DialToPicture {
    private static final int WARMING = 60;
    private static final int MOVES = 240;
    private static final int CURVES = 12;

    /** Moves the rule by turns from place to place, as a hand would, and waits for the frame that shows it. */
    private static final String MOVE =
            """
            const done = arguments[arguments.length - 1], [moves, from] = arguments;
            const rule = document.querySelector('[data-rule=Ct]'), root = document.documentElement;
            const frame = () => new Promise(end => requestAnimationFrame(() => {
              const channel = new MessageChannel(); channel.port1.onmessage = () => end(performance.now()); channel.port2.postMessage(0);
            }));
            (async () => {
              const times = [];
              for (let k = 0; k < moves; k++) {
                const before = root.dataset.drawn;
                const drawn = new Promise(end => {
                  const look = new MutationObserver(() => { if (root.dataset.drawn !== before) { look.disconnect(); end(); } });
                  look.observe(root, {attributes: true, attributeFilter: ['data-drawn']});
                });
                rule.valueAsNumber = 20 + 60 * Math.abs(((from + k) * 0.0173) % 2 - 1);
                const begun = performance.now();
                rule.dispatchEvent(new Event('input', {bubbles: true}));
                await drawn;
                times.push(await frame() - begun);
                await new Promise(end => setTimeout(end, 25));
              }
              done(times);
            })();
            """;

    /** One move, then the wait until the modulation curve of that setting is drawn. */
    private static final String CURVE =
            """
            const done = arguments[arguments.length - 1], [to] = arguments;
            const rule = document.querySelector('[data-rule=Ct]'), picture = document.getElementById('picture-curve');
            rule.valueAsNumber = to;
            const begun = performance.now();
            let pending = false;
            const look = new MutationObserver(() => {
              if (picture.dataset.state === 'pending') pending = true;
              else if (pending) { look.disconnect(); requestAnimationFrame(() => done(performance.now() - begun)); }
            });
            look.observe(picture, {attributes: true, attributeFilter: ['data-state']});
            rule.dispatchEvent(new Event('input', {bubbles: true}));
            """;

    private DialToPicture() {}

    public static void main(String[] arguments) throws Exception {
        Process galena = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        arguments[0],
                        "open",
                        arguments[1],
                        "--no-browser")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(galena.getInputStream(), StandardCharsets.UTF_8))) {
            measure(address(out), galena, System.out);
        } finally {
            galena.destroy();
        }
    }

    private static String address(BufferedReader out) throws IOException {
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            int at = line.indexOf("http://");
            if (at >= 0) return line.substring(at).strip();
        }
        throw new IOException("galena open printed no address");
    }

    private static void measure(String address, Process galena, PrintStream out) throws InterruptedException {
        ChromeDriver browser = browser();
        try {
            browser.get(address);
            browser.manage().timeouts().scriptTimeout(Duration.ofMinutes(3));
            while (!Boolean.TRUE.equals(browser.executeScript("return document.querySelectorAll('.part').length > 0")))
                Thread.sleep(200);
            browser.executeScript("document.querySelector('[data-part=Ct]').dispatchEvent(new MouseEvent('click'))");
            while (!Boolean.TRUE.equals(
                    browser.executeScript("return Boolean(document.querySelector('[data-rule=Ct]'))")))
                Thread.sleep(50);
            browser.executeAsyncScript(MOVE, WARMING, 0);
            Duration before = processor(galena);
            double[] moves = numbers(browser.executeAsyncScript(MOVE, MOVES, WARMING));
            print(out, "dial to picture, ms over " + MOVES + " moves", moves);
            double each = processor(galena).minus(before).toMillis() / (double) MOVES;
            out.printf(Locale.ROOT, "%-44s        %6.1f%n", "processor time of the server a move, ms", each);
            double[] curves = new double[CURVES];
            for (int k = 0; k < CURVES; k++) curves[k] = number(browser.executeAsyncScript(CURVE, 30 + 3 * k));
            print(out, "dial to modulation curve, ms over " + CURVES, curves);
        } finally {
            browser.quit();
        }
    }

    /** What a process has used of the processor, which other work on the machine disturbs less than the time that went by. */
    private static Duration processor(Process process) {
        return process.info().totalCpuDuration().orElse(Duration.ZERO);
    }

    private static ChromeDriver browser() {
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(new File("/usr/bin/chromedriver"))
                .usingAnyFreePort()
                .build();
        ChromeOptions options = new ChromeOptions();
        options.setBinary("/usr/bin/chromium");
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--window-size=1280,800");
        return new ChromeDriver(service, options);
    }

    private static double[] numbers(@Nullable Object values) {
        if (!(values instanceof List<?> list)) throw new IllegalStateException("the page measured nothing: " + values);
        return list.stream().mapToDouble(DialToPicture::number).toArray();
    }

    private static double number(@Nullable Object value) {
        if (value instanceof Number number) return number.doubleValue();
        throw new IllegalStateException("the page measured no time: " + value);
    }

    private static void print(PrintStream out, String what, double[] times) {
        double[] sorted = times.clone();
        java.util.Arrays.sort(sorted);
        out.printf(
                Locale.ROOT,
                "%-44s median %6.1f   95th percentile %6.1f   most %6.1f%n",
                what,
                sorted[sorted.length / 2],
                sorted[(int) Math.ceil(0.95 * sorted.length) - 1],
                sorted[sorted.length - 1]);
    }
}
