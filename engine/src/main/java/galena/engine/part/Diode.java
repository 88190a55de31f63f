package galena.engine.part;

import java.util.List;

/** A diode or tuning diode: a junction, with current from anode to cathode. */
public record Diode(String name, String anode, String cathode, Junction junction) implements Part {
    public Diode {
        Require.named(name);
    }

    @Override
    public List<String> nets() {
        return List.of(anode, cathode);
    }

    @Override
    public List<String> pins() {
        return List.of("anode", "cathode");
    }
}
