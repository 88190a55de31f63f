package galena.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Progress;
import galena.engine.steady.Accuracy;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
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
    @TempDir
    private static Path place;

    private static BuildFolder folder;
    private static Prediction prediction;
    private static List<Path> written;

    @BeforeAll
    static void write() throws Exception {
        try (InputStream demo = PacketTest.class.getResourceAsStream("/galena/demo/build.yaml")) {
            assertThat(demo).isNotNull();
            Files.copy(demo, place.resolve("build.yaml"));
        }
        folder = BuildFolder.open(place);
        prediction = Predict.of(folder, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        written = Packet.write(folder, prediction, place.resolve("packet"), Progress.SILENT);
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
        assertThat(html).doesNotContain("<script", "@import", "url(", "NaN", "null", "TODO", "src=");
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
        assertThat(links)
                .isEqualTo(ids)
                .doesNotHaveDuplicates()
                .contains("schematic", "parts", "power-up", "alignment", "readings");
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
        assertThat(summary.lines().count()).isLessThan(40);
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
                        "envelope.svg");
    }
}
