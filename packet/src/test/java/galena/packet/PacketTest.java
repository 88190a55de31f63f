package galena.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.bench.log.Beside;
import galena.build.drift.Drift;
import galena.build.drift.Warming;
import galena.build.expect.Expected;
import galena.build.expect.Outlook;
import galena.build.fault.Fault;
import galena.build.fault.FaultStudy;
import galena.build.fault.FaultTree;
import galena.build.fault.Faults;
import galena.build.fault.Stages;
import galena.build.fault.Windows;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Progress;
import galena.build.predict.Response;
import galena.build.predict.Running;
import galena.build.spread.Conditions;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import galena.build.substitute.Survey;
import galena.build.winding.WindingPlan;
import galena.engine.steady.Accuracy;
import galena.packet.page.PagePdf;
import galena.packet.sheet.Findings;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import nu.validator.client.EmbeddedValidator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The packet of the demo build, read back by other programs' readers and held against the prediction it was made from. */
class PacketTest {
    private static final String LOG =
            """
            galena: 1
            readings:
              - {carrier: 1.0002 MHz, uncertainty: 50 Hz, when: 2026-03-07, how: "invented, by eye"}
              - {voltage: 4.1 V, uncertainty: 20 mV, at: TP1, how: "invented, by eye"}
            """;

    @TempDir
    private static Path place;

    private static BuildFolder folder;
    private static Prediction prediction;
    private static Findings findings;
    private static List<Path> written;

    @BeforeAll
    static void write() throws Exception {
        try (InputStream demo = PacketTest.class.getResourceAsStream("/galena/demo/build.yaml")) {
            assertThat(demo).isNotNull();
            Files.copy(demo, place.resolve("build.yaml"));
        }
        Files.createDirectories(place.resolve("bench"));
        Files.writeString(place.resolve("bench/log.yaml"), LOG);
        folder = BuildFolder.open(place);
        prediction = Predict.of(folder, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        List<String> unwound = new ArrayList<>();
        List<WindingPlan> windings = WindingPlan.of(folder.build(), 999e3, unwound);
        assertThat(unwound).isEmpty();
        String schematic = Files.readString(Path.of("src/test/resources/schematics/demo.svg"));
        findings = new Findings(
                folder, outlook(), Beside.of(folder, prediction, Progress.SILENT), windings, unwound, schematic);
        written = Packet.write(findings, place.resolve("packet"), PagePdf::of, Progress.SILENT);
    }

    /** As {@link Outlook} asks it, but of fewer copies, faults and candidates. */
    private static Outlook outlook() throws Exception {
        Expected expected = Expected.of(folder, prediction, Progress.SILENT);
        Running running = Running.of(folder.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        SpreadReport spread = Spread.of(folder, Overlay.NONE, Conditions.FULL, 16, 1, Progress.SILENT);
        List<Fault> faults = Faults.of(folder.build(), Overlay.NONE).stream()
                .filter(f -> f.parts().contains("Rs")
                        || f.parts().contains("Cq")
                        || f.parts().contains("Ca"))
                .toList();
        FaultStudy study = FaultStudy.of(running, faults, Progress.SILENT);
        Windows windows = Windows.of(study, (Oscillation) prediction.running(), expected.points(), spread.voltages());
        Predicate<PartEntry> few = p -> List.of("Q1", "Cp", "Rs").contains(p.name());
        return new Outlook(
                prediction,
                expected,
                Optional.of(spread),
                FaultTree.of(
                        study,
                        Stages.of(folder.build(), running.startup().site().part()),
                        windows),
                Optional.of(Survey.of(running, few, Progress.SILENT)),
                Optional.of(Drift.of(folder, Overlay.NONE, Warming.none(25), Drift.CHANNEL, Progress.SILENT)),
                Optional.of(Response.of(folder, Overlay.NONE, "S1", "mod", 20, 1e5, 10)));
    }

    private static String text(String name) throws Exception {
        return Files.readString(place.resolve("packet").resolve(name), StandardCharsets.UTF_8);
    }

    @Test
    void html_is_well_formed_needs_no_network_and_links_lead_somewhere() throws Exception {
        String html = text("packet.html");
        assertThat(html)
                .startsWith("<!DOCTYPE html>\n")
                .contains("<meta charset=\"utf-8\"/>", "<title>Reading-room sender</title>");
        assertThat(html).doesNotContain("<script", "@import", "url(", "NaN", ">null<", "TODO", "src=");
        assertThat(html.replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http");
        DocumentBuilder reader = DocumentBuilderFactory.newInstance().newDocumentBuilder();
        Document document = reader.parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
        List<String> ids = new ArrayList<>(), links = new ArrayList<>();
        var headings = document.getElementsByTagName("h2");
        for (int k = 0; k < headings.getLength(); k++) ids.add(((Element) headings.item(k)).getAttribute("id"));
        var anchors = document.getElementsByTagName("a");
        for (int k = 0; k < anchors.getLength(); k++)
            links.add(((Element) anchors.item(k)).getAttribute("href").substring(1));
        assertThat(ids)
                .doesNotHaveDuplicates()
                .contains("schematic", "parts", "substitutes", "coils", "power-up", "alignment", "readings", "pictures")
                .contains("faults", "reach", "curves", "spread", "drift", "results", "trace", "index");
        assertThat(ids).containsAll(links);
        assertThat(links).containsAll(ids.subList(0, ids.size() - 1));
    }

    /** The checker that the web's own standards body runs: no error and no warning. */
    @Test
    void html_is_valid() throws Exception {
        EmbeddedValidator checker = new EmbeddedValidator();
        checker.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
        JsonNode said = new ObjectMapper().readTree(checker.validate(place.resolve("packet/packet.html")));
        for (JsonNode message : said.get("messages")) {
            boolean harmless = message.path("message").asText().startsWith("Trailing slash on void elements");
            assertThat(harmless).as(message.toString()).isTrue();
        }
    }

    @Test
    void a_browser_has_nothing_to_complain_about() throws Exception {
        Optional<String> browser = Stream.of("chromium", "chromium-browser", "google-chrome")
                .filter(name -> Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, name))))
                .findFirst();
        assumeTrue(browser.isPresent(), "no Chromium on this machine: ./check installs it");
        Path said = place.resolve("browser.log");
        Process process = new ProcessBuilder(
                        browser.get(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--user-data-dir=" + place.resolve("profile"),
                        "--enable-logging=stderr",
                        "--host-resolver-rules=MAP * ~NOTFOUND",
                        "--dump-dom",
                        place.resolve("packet/packet.html").toUri().toString())
                .redirectError(said.toFile())
                .redirectOutput(place.resolve("dom.html").toFile())
                .start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(Files.readString(place.resolve("dom.html"))).contains("Reading-room sender", "</svg>");
        assertThat(Files.readString(said)).doesNotContain("CONSOLE");
    }

    @Test
    void figures_and_tables_are_numbered_without_a_gap() throws Exception {
        String html = text("packet.html");
        for (String kind : List.of("Table", "Figure")) {
            Matcher numbers = Pattern.compile(">" + kind + " (\\d+)\\.").matcher(html);
            int expected = 0;
            while (numbers.find())
                assertThat(Integer.parseInt(numbers.group(1))).isEqualTo(++expected);
            assertThat(expected).isGreaterThan(3);
        }
    }

    @Test
    void pdf_is_tagged_and_its_text_can_be_read() throws Exception {
        try (PDDocument pdf = Loader.loadPDF(place.resolve("packet/packet.pdf").toFile())) {
            assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(pdf.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("Reading-room sender");
            String text =
                    new PDFTextStripper().getText(pdf).replace('\u00A0', ' ').replace('\u03BC', 'µ');
            assertThat(text).contains("First power-up", "BF256B", "100 µH", "3.3 kΩ", "Ct", prediction.digest());
            assertThat(text)
                    .as("words of drawings are text too")
                    .contains("time, µs", "% of travel", "base3", "programme 300 mV");
            byte[] about = pdf.getDocumentCatalog().getMetadata().toByteArray();
            assertThat(new String(about, StandardCharsets.UTF_8)).contains("pdfuaid");
            for (int page = 0; page < pdf.getNumberOfPages(); page++)
                for (var name : pdf.getPage(page).getResources().getXObjectNames())
                    assertThat(pdf.getPage(page).getResources().isImageXObject(name))
                            .as("drawings are lines")
                            .isFalse();
        }
    }

    @Test
    void parts_list_opens_as_a_table_with_every_part() throws Exception {
        String csv = text("parts.csv");
        assertThat(csv.charAt(0))
                .as("the mark by which spreadsheets know UTF-8")
                .isEqualTo('\uFEFF');
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<CSVRecord> rows = CSVParser.parse(csv.substring(1), format).getRecords();
        assertThat(rows.stream().map(r -> r.get("part")).skip(1))
                .containsExactlyElementsOf(folder.build().parts().keySet());
        CSVRecord rs = rows.stream()
                .filter(r -> r.get("part").equals("Rs"))
                .findFirst()
                .orElseThrow();
        assertThat(rs.get("value")).isEqualTo("3.3 kΩ");
        assertThat(rs.get("why")).startsWith("starves the drain");
    }

    @Test
    void json_carries_the_predictions_own_numbers() throws Exception {
        JsonNode top = new ObjectMapper().readTree(text("packet.json"));
        assertThat(top.get("digest").asText()).isEqualTo(prediction.digest());
        List<Figure> rest = prediction.rest().voltages();
        assertThat(top.get("standing_voltages")).hasSize(rest.size());
        for (int k = 0; k < rest.size(); k++)
            assertThat(top.get("standing_voltages").get(k).get("value").asDouble())
                    .isEqualTo(((Figure.Known) rest.get(k)).value());
        assertThat(top.get("readings")).hasSize(folder.build().points().size());
    }

    /** A probe's picofarads across a tuned circuit lower its frequency; at the source they do so by less than the whole window. */
    @Test
    void probes_move_the_carrier_down_and_every_reading_lies_in_its_window() throws Exception {
        double unprobed = ((Oscillation) prediction.running()).carrier().value();
        for (JsonNode point : new ObjectMapper().readTree(text("packet.json")).get("readings")) {
            assertThat(point.get("carrier").get("value").asDouble()).isBetween(0.99 * unprobed, unprobed);
            for (String what : List.of("carrier", "peak", "mean")) {
                JsonNode figure = point.get(what);
                assertThat(figure.get("value").asDouble())
                        .isBetween(
                                figure.get("low").asDouble(), figure.get("high").asDouble());
            }
        }
    }

    @Test
    void sweeps_pass_through_the_carrier_where_the_trimmer_is_set() throws Exception {
        double carrier = ((Oscillation) prediction.running()).carrier().value();
        for (JsonNode sweep : new ObjectMapper().readTree(text("packet.json")).get("adjustments"))
            for (JsonNode point : sweep.get("points"))
                if (point.get("position").asDouble() == sweep.get("set").asDouble())
                    assertThat(point.get("carrier_hz").asDouble())
                            .as(sweep.get("part").asText())
                            .isCloseTo(carrier, within(1e-5 * carrier));
    }

    @Test
    void alignment_says_which_way_to_turn() throws Exception {
        Oscillation running = (Oscillation) prediction.running();
        double slope = running.adjustments().stream()
                .filter(a -> a.part().equals("Ct"))
                .findFirst()
                .orElseThrow()
                .hertzPerPercent();
        assertThat(slope).as("more capacitance, lower frequency").isNegative();
        assertThat(text("packet.html"))
                .contains("Turn Ct until it stands on 999 kHz: too low, turn it down; too high, up.");
    }

    @Test
    void the_summary_is_short_and_defers_to_the_regulator() throws Exception {
        String summary = text("summary.txt");
        assertThat(summary.lines().count()).isLessThan(60);
        assertThat(summary)
                .startsWith("Reading-room sender\n")
                .contains("Q1 BF256B", "TP1 (source, probe 10x)", "your regulator");
    }

    @Test
    void every_drawing_is_a_file_of_its_own() {
        assertThat(written).allSatisfy(file -> assertThat(file).isNotEmptyFile());
        assertThat(written.stream().map(f -> f.getFileName().toString()))
                .contains(
                        "schematic.svg",
                        "carrier.svg",
                        "spectrum.svg",
                        "tuning-Ct.svg",
                        "modulation.svg",
                        "envelope.svg",
                        "trapezoid.svg",
                        "audio.svg",
                        "drift.svg",
                        "sensitivities.svg",
                        "spread-as-set.svg");
    }

    @Test
    void a_winding_sheet_says_turns_wire_former_and_what_to_do() throws Exception {
        String html = text("packet.html");
        assertThat(html)
                .contains("Lt, 100 µH ±5 %", "La, 47 µH ±5 %", "Turns: 21 of enamelled copper", "take off", "add ");
        WindingPlan lt = findings.windings().get(0);
        assertThat(lt.asBuilt()).isFalse();
        assertThat(((Figure.Known) lt.coil().inductance()).value()).isCloseTo(100e-6, within(2e-6));
        assertThat(lt.corrections().get(0).turns()).as("reads low: add").isPositive();
    }

    @Test
    void fault_trees_name_stage_reading_window_and_suspects() throws Exception {
        String html = text("packet.html");
        assertThat(html)
                .contains("Stage: oscillator", "Stage: output", "Read the ", "Rs open", "Cq open", "as it should be");
        JsonNode faults = new ObjectMapper().readTree(text("packet.json")).get("faults");
        assertThat(faults).hasSize(findings.outlook().faults().size());
    }

    @Test
    void substitutes_tell_what_changes_with_them() throws Exception {
        assertThat(text("packet.html")).contains("In place of BF256B (Q1)", "J310", "100 pF and 22 pF in parallel");
        assertThat(text("parts.csv")).contains("2N3819");
    }

    @Test
    void results_stand_beside_their_predictions() throws Exception {
        String html = text("packet.html");
        assertThat(html).contains("What was measured", ">fits<", ">apart<", "1.0002 MHz");
        JsonNode results = new ObjectMapper().readTree(text("packet.json")).get("results");
        assertThat(results).hasSize(folder.log().size());
    }

    @Test
    void alignment_steps_say_what_to_expect_and_what_if_not() throws Exception {
        String html = text("packet.html");
        String steps = html.substring(html.indexOf("id=\"alignment\""), html.indexOf("id=\"readings\""));
        assertThat(steps.split("Expect").length).isGreaterThan(4);
        assertThat(steps.split("If ").length).isGreaterThan(6);
        assertThat(steps.split("Check").length).isGreaterThan(4);
    }
}
