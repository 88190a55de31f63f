package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.predict.Prediction;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Carrier and harmonics as an aerial sends them. Spreads of current and of moment are independent: they add as squares. */
final class Emissions {
    private static final double PEAK_TO_RMS = Math.sqrt(0.5);
    private static final double NEPER = Math.log(10) / 20;

    private final Aerial aerial;
    private final Prediction.Spectrum spectrum;
    private final double carrier;

    private Emissions(Aerial aerial, Prediction.Spectrum spectrum, double carrier) {
        this.aerial = aerial;
        this.spectrum = spectrum;
        this.carrier = carrier;
    }

    /** The predicted current in a part; none where hardly any flows. */
    static Optional<Prediction.Spectrum> current(String part, Prediction.Oscillation oscillation) {
        return oscillation.spectra().stream()
                .filter(s -> s.part().equals(part) && s.quantity().startsWith("current"))
                .findFirst();
    }

    /** The carrier first. Harmonics that lie below what is certified, or where the aerial isn't reckoned, are left out. */
    static List<Emission> of(Aerial aerial, Prediction.Spectrum spectrum, Figure.Known carrier) {
        Emissions emissions = new Emissions(aerial, spectrum, carrier.value());
        List<Emission> all = new ArrayList<>();
        all.add(emissions.emission(1, spectrum.fundamental().value(), 0, 0));
        for (int k = 0; k < spectrum.harmonics().size(); k++) {
            if (!(spectrum.harmonics().get(k) instanceof Figure.Known level)) continue;
            if ((k + 2) * carrier.value() > aerial.highest()) break;
            double peak = spectrum.fundamental().value() * Math.exp(NEPER * level.value());
            all.add(emissions.emission(
                    k + 2, peak, NEPER * (level.low() - level.value()), NEPER * (level.high() - level.value())));
        }
        return all;
    }

    /** How many harmonics were too weak to be certified. */
    static int unseen(Prediction.Spectrum spectrum) {
        return (int) spectrum.harmonics().stream()
                .filter(Figure.Missing.class::isInstance)
                .count();
    }

    private Emission emission(int order, double peak, double low, double high) {
        Figure.Known f = spectrum.fundamental();
        double currentLow = -Math.hypot(Math.log(f.value() / f.low()), low);
        double currentHigh = Math.hypot(Math.log(f.high() / f.value()), high);
        double rms = peak * PEAK_TO_RMS;
        Figure.Known current = new Figure.Known(
                rms,
                Unit.AMPERE,
                Math.min(rms, rms * Math.exp(currentLow)),
                Math.max(rms, rms * Math.exp(currentHigh)),
                f.basis(),
                "current in " + spectrum.part() + " at " + (order == 1 ? "the carrier" : "harmonic " + order) + ", rms",
                spectrum.part());
        double[] moment = aerial.spread();
        return new Emission(
                order,
                aerial.carrying(rms, order * carrier),
                current,
                -Math.hypot(currentLow, moment[0]),
                Math.hypot(currentHigh, moment[1]));
    }
}
