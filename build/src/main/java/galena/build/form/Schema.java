package galena.build.form;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Describes a form in JSON Schema, draft 2020-12, for editors. */
public final class Schema {
    private Schema() {}

    /**
     * The schema of a whole file.
     *
     * @param title what the file is
     * @param id the schema's address
     */
    public static ObjectNode of(Form form, String title, String id) {
        Definitions definitions = new Definitions();
        ObjectNode body = group(form, definitions);
        ObjectNode schema = Definitions.object()
                .put("$schema", "https://json-schema.org/draft/2020-12/schema")
                .put("$id", id)
                .put("title", title);
        schema.setAll(body);
        schema.set("$defs", definitions.asJson());
        return schema;
    }

    static ObjectNode group(Form form, Definitions definitions) {
        ObjectNode schema = Definitions.object().put("type", "object");
        ObjectNode properties = schema.putObject("properties");
        ArrayNode required = schema.putArray("required");
        for (Field field : form.fields()) {
            ObjectNode value = field.type().schema(definitions);
            properties.set(field.key(), value.put("description", field.rule()));
            if (field.required()) required.add(field.key());
        }
        return schema.put("additionalProperties", false);
    }
}
