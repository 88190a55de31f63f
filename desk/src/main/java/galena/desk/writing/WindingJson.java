package galena.desk.writing;

import galena.build.winding.Coil;
import galena.build.winding.Trial;

/** Coils and trial windings as JSON, in SI units. */
public final class WindingJson {
    private WindingJson() {}

    public static String of(Coil coil) {
        return Json.document("coil", json -> {
            json.text("shape", coil.shape()).text("wire", coil.wire()).text("core", coil.core());
            json.number("wanted", coil.wanted()).number("frequency", coil.frequency());
            json.number("exactTurns", coil.exactTurns())
                    .number("turns", coil.turns())
                    .number("layers", coil.layers());
            json.figure("inductance", coil.inductance());
            json.object("causes", () -> coil.causes().forEach(json::number));
            json.number("oneTurnLess", coil.oneLess()).number("oneTurnMore", coil.oneMore());
            json.number("turnsToSpare", coil.spare()).number("windingLength", coil.windingLength());
            json.number("wireLength", coil.wireLength()).number("resistance", coil.resistance());
            json.figure("q", coil.q());
            json.object("lossShares", () -> coil.losses().forEach(json::number));
            json.figure("selfCapacitance", coil.selfCapacitance()).figure("selfResonance", coil.selfResonance());
            json.number("tuningCapacitance", coil.tuning()).figure("momentPerAmpere", coil.moment());
            json.each("curve", coil.curve(), p -> json.number("frequency", p.frequency())
                    .figure("q", p.q()));
            json.texts("notes", coil.notes());
        });
    }

    public static String of(Trial trial) {
        return Json.document("trial", json -> {
            json.text("shape", trial.shape()).text("wire", trial.wire()).number("turns", trial.turns());
            json.figure("measured", trial.measured()).figure("reckoned", trial.reckoned());
            trial.permeability().ifPresent(mu -> json.figure("permeability", mu));
            trial.wanted().ifPresent(wanted -> json.figure("turnsWanted", wanted));
            trial.change().ifPresent(change -> json.number("change", change));
            trial.slide().ifPresent(slide -> json.figure("slide", slide));
            json.texts("notes", trial.notes());
        });
    }
}
