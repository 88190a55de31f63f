package galena.build.winding;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Map;

/**
 * A coil as it should be wound.
 *
 * @param shape in words
 * @param wire in words
 * @param core in words, or empty
 * @param wanted inductance (H)
 * @param frequency at which it works (Hz)
 * @param exactTurns that would give the inductance
 * @param turns whole
 * @param layers one above the other
 * @param inductance that the whole turns give, and what it may be
 * @param causes what each uncertain input does to it, either way (H), largest first
 * @param oneLess inductance with a turn less (H)
 * @param oneMore inductance with a turn more (H)
 * @param spare turns that would still fit
 * @param windingLength space that the turns take (m)
 * @param wireLength without leads (m)
 * @param resistance to direct current (Ω)
 * @param q at the frequency, or why not
 * @param losses share of each cause in the series resistance, largest first
 * @param selfCapacitance or why not
 * @param selfResonance or why not
 * @param tuning capacitance in all that tunes it to the frequency (F)
 * @param moment magnetic moment per ampere (m²), for forms that radiate
 * @param curve Q over medium waves; empty where it can't be had
 * @param notes what to know besides
 */
public record Coil(
        String shape,
        String wire,
        String core,
        double wanted,
        double frequency,
        double exactTurns,
        int turns,
        int layers,
        Figure inductance,
        Map<String, Double> causes,
        double oneLess,
        double oneMore,
        double spare,
        double windingLength,
        double wireLength,
        double resistance,
        Figure q,
        Map<String, Double> losses,
        Figure selfCapacitance,
        Figure selfResonance,
        double tuning,
        Figure moment,
        List<QPoint> curve,
        List<String> notes)
        implements CoilAnswer {
    public Coil {
        curve = List.copyOf(curve);
        notes = List.copyOf(notes);
    }

    /** Q at a frequency (Hz), with what it may be. */
    public record QPoint(double frequency, Figure.Known q) {}
}
