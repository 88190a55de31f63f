package galena.packet.modulation;

import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import java.util.ArrayList;
import java.util.List;

/** The audio response of a carrier, and the envelope that a tone makes of it. */
public final class ModulationCharts {
    /** What lies this far down is drawn at the edge. */
    private static final double FLOOR = -40;

    private ModulationCharts() {}

    /** Depth against audio frequency, dB. */
    public static Chart response(AudioResponse response) {
        List<Point> points = response.points().stream()
                .map(p -> Point.at(p.audio(), Math.max(FLOOR, p.decibels())))
                .toList();
        return new Chart(
                "Audio response of the " + response.quantity(),
                Axis.logarithmic("audio frequency", "kHz", 1e3),
                Axis.linear("depth against that at 1 kHz", "dB", 1),
                List.of(Series.of("depth", points)),
                List.of(),
                List.of());
    }

    /** Two periods of the envelope, above and below. */
    public static Chart envelope(Modulated tone) {
        boolean current = tone.quantity().startsWith("current");
        List<Point> upper = new ArrayList<>(), lower = new ArrayList<>();
        int places = tone.envelope().size();
        for (int k = 0; k <= 2 * places; k++) {
            double time = k / (places * tone.audio()), at = tone.envelope().get(k % places);
            upper.add(Point.at(time, at));
            lower.add(Point.at(time, -at));
        }
        return new Chart(
                "Envelope of the " + tone.quantity(),
                Axis.linear("time", "ms", 1e-3),
                Axis.linear(tone.quantity() + ", peak", current ? "mA" : "V", current ? 1e-3 : 1),
                List.of(Series.of("upper", upper), Series.of("lower", lower)),
                List.of(),
                List.of());
    }
}
