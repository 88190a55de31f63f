package galena.build.modulation;

/** What a tone does to a carrier, or why that is not known. */
public sealed interface ToneAnswer permits Modulated, ToneAnswer.NoTone {
    /** Not known; why. */
    record NoTone(String reason) implements ToneAnswer {}
}
