package galena.bench.plot;

import static org.assertj.core.api.Assertions.assertThat;

import galena.bench.capture.Capture;
import galena.bench.capture.Channel;
import galena.bench.capture.ChannelStatistics;
import galena.bench.capture.Understanding;
import galena.bench.capture.Waveforms;
import galena.bench.measure.Expected;
import galena.bench.measure.Measure;
import galena.bench.measure.Report;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

class PlotsTest {
    private static Report report() {
        int n = 60_000;
        double[] rf = new double[n], audio = new double[n];
        Random random = new Random(3);
        for (int k = 0; k < n; k++) {
            double t = k / 10e6;
            audio[k] = Math.cos(2 * Math.PI * 1000 * t) + 0.01 * random.nextGaussian();
            rf[k] = (1 + 0.7 * Math.cos(2 * Math.PI * 1000 * t)) * Math.cos(2 * Math.PI * 999e3 * t)
                    + 0.01 * random.nextGaussian();
        }
        ChannelStatistics s = new ChannelStatistics(n, -1.7, 1.7, 0, 0, 0, 1);
        Waveforms waves = new Waveforms(
                1e-7, 0, List.of(new Channel("CH1", "V", rf, s), new Channel("CH2", "V", audio, s)), false, false);
        Understanding u = new Understanding("made here", "none", "stated", 0, n, 0, 0, List.of());
        return Measure.capture(new Capture("a <b> & \"c\"", waves, u), Expected.nothing());
    }

    @Test
    void every_plot_is_well_formed_and_drawn_in_ink_on_paper() throws Exception {
        Report report = report();
        for (String svg : List.of(
                Plots.waveform(report).orElseThrow(),
                Plots.spectrum(report).orElseThrow(),
                Plots.trapezoid(report).orElseThrow())) {
            Document document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
            assertThat(document.getDocumentElement().getTagName()).isEqualTo("svg");
            assertThat(document.getElementsByTagName("title").item(0).getTextContent())
                    .startsWith("a <b> & \"c\"");
            assertThat(document.getElementsByTagName("path").getLength()).isGreaterThan(10);
            assertThat(svg).doesNotContain("NaN").doesNotContain("Infinity");
        }
        assertThat(Plots.waveform(report)).isEqualTo(Plots.waveform(report()));
    }

    @Test
    void marks_stand_at_round_values() {
        assertThat(new Axis(0, 9.7, 0, 100).marks()).containsExactly(0.0, 2.0, 4.0, 6.0, 8.0);
        assertThat(Axis.label(0.25)).isEqualTo("0.25");
        assertThat(Axis.label(-20)).isEqualTo("−20");
    }
}
