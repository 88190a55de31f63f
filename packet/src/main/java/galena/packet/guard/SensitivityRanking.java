package galena.packet.guard;

import galena.build.guard.GuardReport;
import galena.packet.chart.Ranking;
import galena.packet.chart.Ranking.Bar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The causes that move the carrier most, each by what it is likely to be: one percent, one picofarad, one lead, ten degrees. */
public final class SensitivityRanking {
    private SensitivityRanking() {}

    /** @param most bars at most, 1 or more */
    public static Ranking of(GuardReport report, int most) {
        List<Bar> bars = new ArrayList<>();
        report.parts()
                .forEach(p ->
                        bars.add(new Bar("1 % of " + p.value(), p.perPercent().carrier())));
        report.distinctStrays()
                .forEach(s -> bars.add(new Bar(
                        "1 pF " + s.from() + " to " + s.to(), s.perPicofarad().carrier())));
        report.leads()
                .forEach(l -> bars.add(new Bar(
                        "10 nH in " + l.part() + " at " + l.net(),
                        l.perTenNanohenries().carrier())));
        report.couplings()
                .forEach(c -> bars.add(new Bar(
                        "k = 0.001 " + c.first() + " to " + c.second(),
                        c.moves().carrier())));
        report.tools()
                .forEach(t ->
                        bars.add(new Bar("metal near " + t.coil(), t.moves().carrier())));
        report.probes().forEach(p -> p.tenToOne().ifPresent(h -> bars.add(new Bar("10:1 probe at " + p.net(), h))));
        bars.add(new Bar("10 °C warmer", report.drift().perTenKelvin().carrier()));
        bars.add(new Bar("1 V more", report.drift().perVolt().carrier()));
        bars.sort(Comparator.comparingDouble(b -> -Math.abs(b.value())));
        return new Ranking("What moves the carrier", "carrier, kHz", 1e3, bars.subList(0, Math.min(most, bars.size())));
    }
}
