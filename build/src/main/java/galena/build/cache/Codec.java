package galena.build.cache;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.BasicPolymorphicTypeValidator;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import galena.build.fault.Fault;
import java.io.IOException;
import java.util.List;

/** Writes records as they are and reads them back: sealed kinds by the name of the record, faults by their words. */
final class Codec {
    private static final String OURS = "galena.build.";

    private Codec() {}

    static ObjectMapper mapper(List<Fault> faults) {
        BasicPolymorphicTypeValidator ours =
                BasicPolymorphicTypeValidator.builder().allowIfSubType(OURS).build();
        SealedKinds kinds = new SealedKinds(ours);
        kinds.init(JsonTypeInfo.Id.CLASS, null);
        kinds.inclusion(JsonTypeInfo.As.PROPERTY);
        kinds.typeProperty("kind of");
        SimpleModule words = new SimpleModule();
        words.addSerializer(Fault.class, new FaultWords());
        words.addDeserializer(Fault.class, new FaultOfWords(faults));
        ObjectMapper mapper = JsonMapper.builder()
                .addModule(new Jdk8Module())
                .addModule(words)
                .visibility(PropertyAccessor.GETTER, Visibility.NONE)
                .visibility(PropertyAccessor.IS_GETTER, Visibility.NONE)
                .visibility(PropertyAccessor.FIELD, Visibility.ANY)
                .build();
        mapper.setDefaultTyping(kinds);
        return mapper;
    }

    /** Interfaces of Galena's own name their record; everything else is told by its declaration. */
    private static final class SealedKinds extends ObjectMapper.DefaultTypeResolverBuilder {
        private static final long serialVersionUID = 1;

        SealedKinds(BasicPolymorphicTypeValidator validator) {
            super(ObjectMapper.DefaultTyping.NON_FINAL, validator);
        }

        @Override
        public boolean useForType(JavaType type) {
            return type.getRawClass().isInterface()
                    && type.getRawClass().getName().startsWith(OURS);
        }
    }

    private static final class FaultWords extends StdSerializer<Fault> {
        private static final long serialVersionUID = 1;

        FaultWords() {
            super(Fault.class);
        }

        @Override
        public void serialize(Fault fault, JsonGenerator out, SerializerProvider provider) throws IOException {
            out.writeString(fault.words());
        }
    }

    private static final class FaultOfWords extends StdDeserializer<Fault> {
        private static final long serialVersionUID = 1;

        private final transient List<Fault> faults;

        FaultOfWords(List<Fault> faults) {
            super(Fault.class);
            this.faults = faults;
        }

        @Override
        public Fault deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            String words = parser.getText();
            return faults.stream()
                    .filter(f -> f.words().equals(words))
                    .findFirst()
                    .orElseThrow(() -> context.weirdStringException(words, Fault.class, "the build has no such fault"));
        }
    }
}
