package galena.desk.writing;

import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.build.modulation.ToneAnswer;

/** What tones do to a carrier, as JSON. */
public final class ModulationJson {
    private ModulationJson() {}

    static void tone(Json json, ToneAnswer answer) {
        if (answer instanceof ToneAnswer.NoTone none) {
            json.text("state", "none").text("reason", none.reason());
            return;
        }
        Modulated m = (Modulated) answer;
        json.text("state", "tone").text("quantity", m.quantity());
        json.number("level", m.level())
                .number("audio", m.audio())
                .text("way", m.way().toString());
        json.number("carrier", m.carrier());
        json.figure("positivePeak", m.positivePeak()).figure("negativePeak", m.negativePeak());
        json.figures("harmonics", m.harmonics()).figure("distortion", m.distortion());
        json.figure("carrierShift", m.carrierShift()).figure("swing", m.swing());
        json.figure("oscillatorSwing", m.oscillatorSwing());
        json.texts("troubles", m.troubles().stream().map(Object::toString).toList());
        json.numbers("envelope", m.envelope());
    }

    static void response(Json json, AudioResponse r) {
        json.text("quantity", r.quantity()).number("reference", r.reference());
        json.each("points", r.points(), p -> json.number("audio", p.audio())
                .number("decibels", p.decibels())
                .number("depth", p.depth())
                .number("swing", p.swing()));
        json.figure("low", r.low()).figure("high", r.high());
    }
}
