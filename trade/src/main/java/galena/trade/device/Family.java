package galena.trade.device;

/** Kinds of device that the library holds; the word is the one data files use. */
public enum Family {
    N_JFET("n-jfet"),
    P_JFET("p-jfet"),
    NPN("npn"),
    PNP("pnp"),
    DUAL_GATE_N_MOSFET("dual-gate-n-mosfet"),
    SILICON_DIODE("silicon-diode"),
    SCHOTTKY_DIODE("schottky-diode"),
    GERMANIUM_DIODE("germanium-diode"),
    TUNING_DIODE("tuning-diode");

    private final String word;

    Family(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
