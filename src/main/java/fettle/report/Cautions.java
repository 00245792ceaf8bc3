package fettle.report;

import fettle.quantity.Method;
import java.util.ArrayList;
import java.util.List;

/** What must be said beside every curve that may serve decisions on parts (common practice). */
final class Cautions {
  private Cautions() {}

  static List<String> of(Method method, boolean simulated) {
    List<String> cautions = new ArrayList<>();
    if (simulated) {
      cautions.add(
          "The numbers of this report are simulated. They describe no material and must never be"
              + " used for a part.");
    }
    cautions.add(
        "A value from this curve is an estimate by an empirical relation for the material family,"
            + " product form, surface and instrument named here. It is not a Vickers, Brinell or"
            + " Rockwell test by ISO 6506, ISO 6507, ISO 6508 or their ASTM counterparts.");
    cautions.add(
        "It describes the place tested, near the surface. It proves neither the hardness of the"
            + " whole part nor its heat treatment, nor that it is free of cracks or soft zones.");
    cautions.add(
        "Outside the stated range and conditions there is no value, and no decision may rest on"
            + " one.");
    cautions.add(
        "The governing code, specification or contract sets acceptance limits, sampling, method"
            + " and personnel, and prevails over this report. Where it names a bench method or a"
            + " referee test, that test decides.");
    cautions.add(
        "A statement of conformity must account for the uncertainty by an agreed decision rule."
            + " Near a limit, have a referee test made by an agreed method.");
    cautions.add(
        "For use by trained and authorised persons. The decision stays with the responsible"
            + " engineer or inspector; this program approves nothing.");
    cautions.add(
        "When a check fails or damage is suspected: stop, hold back the results since the last"
            + " good check, and tell the person responsible.");
    cautions.add(
        "Preparation and indents can harm a part. Mind sealing faces, highly stressed radii,"
            + " coatings and implants; touch no energised, pressurised or moving equipment without"
            + " a permit.");
    if (method == Method.REBOUND) {
      cautions.add("Never fire an impact device towards a person; wear eye protection.");
    }
    cautions.add("No tensile strength follows from this curve.");
    return cautions;
  }
}
