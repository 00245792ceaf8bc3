package fettle.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.fit.ModelId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModelNamesTest {
  @ParameterizedTest
  @CsvSource({
    "power, h = a rb",
    "exponential, h = a eb r",
    "polynomial-1, h = b0 + b1 r",
    "polynomial-3, h = b0 + b1 r + b2 r2 + b3 r3",
    "log-polynomial-2, ln h = c0 + c1 ln r + c2 (ln r)2",
    "rational-1-1, h = (b0 + b1 r) / (1 + c1 r)",
    "rational-2-2, h = (b0 + b1 r + b2 r2) / (1 + c1 r + c2 r2)"
  })
  void setsTheFormulaOfEveryModel(String model, String textAlone) {
    String formula = ModelNames.formula(new ModelId(model));
    assertEquals(textAlone, formula.replaceAll("<[^>]+>", ""));
  }

  @Test
  void callsModelsByTheirWords() {
    assertEquals("straight line (polynomial‑1)", ModelNames.of(new ModelId("polynomial-1")));
    assertEquals("polynomial of degree 10", ModelNames.words("polynomial-10"));
    assertEquals("polynomial in ln r of degree 3", ModelNames.words("log-polynomial-3"));
    assertEquals("ratio of polynomials of degree 2", ModelNames.words("rational-2-2"));
  }
}
