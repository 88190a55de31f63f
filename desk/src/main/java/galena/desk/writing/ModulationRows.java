package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.build.modulation.ToneAnswer;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Rows of what a tone does to a carrier; depth and swing stand side by side wherever they are printed. */
final class ModulationRows {
    private ModulationRows() {}

    static void tone(Page.Table table, ToneAnswer answer) {
        if (answer instanceof ToneAnswer.NoTone none) {
            table.row("depth", "not known: " + none.reason());
            return;
        }
        Modulated tone = (Modulated) answer;
        table.row(
                "depth and swing",
                signed("+", tone.positivePeak()) + ", " + signed("−", tone.negativePeak()) + "; swing "
                        + (tone.swing() instanceof Figure.Known swing
                                ? Words.alone(swing) + " peak"
                                : tone.swing().text()));
        table.row("distortion", Words.alone(tone.distortion()) + " of the envelope: " + harmonics(tone));
        table.row("carrier shift", Words.alone(tone.carrierShift()));
        if (tone.oscillatorSwing() instanceof Figure.Known own) {
            table.row(
                    "oscillator's own", "swing " + Words.alone(own) + " peak; what follows it adds or takes the rest");
        }
        if (!tone.troubles().isEmpty()) {
            table.row("trouble", tone.troubles().stream().map(Object::toString).collect(Collectors.joining("; ")));
        }
        if (tone.way() != Modulated.Way.DIRECTLY) table.row("found", tone.way().toString());
    }

    /** A peak against the carrier; a trough above the carrier has a negative one. */
    private static String signed(String sign, Figure peak) {
        if (!(peak instanceof Figure.Known known)) return peak.text();
        String words = Words.alone(known);
        if (!words.startsWith("−")) return sign + words;
        return (sign.equals("+") ? "−" : "+") + words.substring(1);
    }

    private static String harmonics(Modulated tone) {
        List<String> words = new ArrayList<>();
        int order = 2;
        for (Figure f : tone.harmonics()) {
            if (f instanceof Figure.Known known)
                words.add(order + ": " + Words.number(100 * known.value(), Unit.NUMBER, 2) + " %");
            order++;
        }
        return String.join(", ", words);
    }

    static void response(Page.Table table, AudioResponse response) {
        table.row("−3 dB points", end(response.low()) + " and " + end(response.high()));
    }

    static String end(Figure figure) {
        return figure instanceof Figure.Missing none
                ? none.reason()
                : Words.number(((Figure.Known) figure).value(), Unit.HERTZ, 3);
    }
}
