package fettle.library;

import static fettle.library.TestLaboratory.NAME;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import fettle.block.BlockRole;
import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The published schemas and the readers say the same of a file. */
class SchemaTest {
  private static final SchemaRegistry REGISTRY =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

  @TempDir Path home;
  private LaboratoryFolder laboratory;

  @BeforeEach
  void fill() {
    laboratory = TestLaboratory.filled(home);
    laboratory.assignRole(NAME, "B4", BlockRole.DRIFT);
    laboratory.withdrawBlock("B8", "cracked");
    laboratory.exclude(NAME, "run-1.csv", 2, "A. Person", "slipped");
    laboratory.include(NAME, "run-1.csv", 2, "A. Person", "it had not");
    TestLaboratory.keepDraft(laboratory);
  }

  private static List<String> errors(String schema, String text) throws IOException {
    String source = Files.readString(Path.of("docs/schema", schema + ".schema.json"));
    Schema loaded = REGISTRY.getSchema(source);
    return loaded.validate(text, InputFormat.JSON).stream().map(Object::toString).toList();
  }

  private String text(String file) throws IOException {
    return Files.readString(home.resolve(file), StandardCharsets.UTF_8);
  }

  @Test
  void whatIsWrittenFitsItsSchema() throws IOException {
    assertEquals(List.of(), errors("block", text("reference-blocks/B1.json")));
    assertEquals(List.of(), errors("block", text("reference-blocks/B8.json")));
    assertEquals(List.of(), errors("dossier", text("curves/" + NAME + "/dossier.json")));
    assertEquals(List.of(), errors("policy", text("curves/" + NAME + "/policy.json")));
    assertEquals(List.of(), errors("curve", text("curves/" + NAME + "/draft/curve.json")));
    for (String history : List.of("reference-blocks", "curves/" + NAME)) {
      for (String line : text(history + "/history.jsonl").split("\n")) {
        assertEquals(List.of(), errors("event", line));
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "block|reference-blocks/B1.json|\"role\": \"fit\"|\"role\": \"fitting\"",
        "block|reference-blocks/B1.json|\"coverageFactor\": 2|\"coverageFactor\": 0",
        "block|reference-blocks/B1.json|\"material\"|\"metal\"",
        "dossier|curves/steel-hv10/dossier.json|\"method\": \"uci\"|\"method\": \"UCY\"",
        "dossier|curves/steel-hv10/dossier.json|\"responseUnit\": \"Hz\"|\"responseUnit\": \"kHz\"",
        "policy|curves/steel-hv10/policy.json|\"relative\": 0.06|\"relative\": 6",
        "policy|curves/steel-hv10/policy.json|\"citation\": \"example\"|\"source\": \"example\"",
        "policy|curves/steel-hv10/policy.json|\"formatVersion\": 1|\"formatVersion\": 2"
      })
  void schemaAndReaderRefuseTheSame(String schema, String file, String from, String to)
      throws IOException {
    String text = text(file);
    String changed = text.replace(from, to);
    assertFalse(changed.equals(text), from + " is not in " + file);
    assertFalse(errors(schema, changed).isEmpty());
    byte[] bytes = changed.getBytes(StandardCharsets.UTF_8);
    assertThrows(
        InputRefusedException.class,
        () -> {
          switch (schema) {
            case "block" -> BlockJson.read(bytes, file);
            case "dossier" -> DossierJson.read(bytes, file);
            default -> PolicyFile.read(bytes, file);
          }
        });
  }
}
