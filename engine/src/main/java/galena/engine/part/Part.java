package galena.engine.part;

import java.util.List;

/** A component with a name and pins. Current into a pin is positive; a two-pin part's voltage is first pin minus second. */
public sealed interface Part
        permits Battery,
                Bipolar,
                Capacitor,
                Coil,
                Coupling,
                CurrentSource,
                Diode,
                DualGateMosfet,
                Jfet,
                Load,
                Mosfet,
                OpAmp,
                Preset,
                Resistor,
                Resonator,
                Trimmer,
                VoltageSource {
    /** The name, unique in its circuit. */
    String name();

    /** The nets joined, pin by pin, in the order of the record's components. */
    List<String> nets();

    /** The names of the pins, in the order of {@link #nets()}. */
    List<String> pins();
}
