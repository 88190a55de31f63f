package galena.packet.sheet;

import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.build.quantity.Unit;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Bullets;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Where the figures come from, so that a printed packet can be traced to its build. */
final class TraceSheet {
    private static final int REVISION = 8;

    private TraceSheet() {}

    static Optional<Section> of(Findings findings) {
        Prediction prediction = findings.prediction();
        List<String> items = new ArrayList<>();
        items.add("Digest of everything that went in (SHA-256): " + prediction.digest());
        items.add("Digest of build.yaml: " + findings.build().file().digest());
        Prediction.Setting setting = prediction.setting();
        String supply = setting.supplyVoltage()
                .map(v -> ", supply " + Wording.number(v, Unit.VOLT, 3) + " open circuit")
                .orElse("");
        items.add("Conditions: " + Math.round(setting.temperature()) + " °C" + supply + ", accuracy "
                + setting.accuracy() + ".");
        if (prediction.running() instanceof Oscillation o)
            items.add("The carrier was solved as the circuit's own steady state, to "
                    + String.format(Locale.ROOT, "%.0e", o.errorFrequency()) + " of its frequency and "
                    + String.format(Locale.ROOT, "%.2g dB", o.errorHarmonics())
                    + " in harmonics, by comparison with a finer mesh.");
        items.add("Revision: " + findings.build().file().digest().substring(0, REVISION)
                + ", the first letters of the digest of build.yaml; another one is another build.");
        items.add(
                "Windows of the prediction are first order: every tolerance by its derivative, devices by their weakest and strongest"
                        + " specimen; they hold 95 % of builds at the conditions above. Windows of copies: "
                        + ExpectedVoltages.basis(findings) + ".");
        items.addAll(prediction.notes());
        List<Block> blocks = List.of(new Bullets(items));
        return Optional.of(new Section("trace", "Where the figures come from", blocks));
    }
}
