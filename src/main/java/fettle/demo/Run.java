package fettle.demo;

import fettle.reading.Reading;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One run: one operator on one day with one probe, all blocks in random order between readings of
 * the steel blocks.
 *
 * <p>Order: the standards, the drift block, half of the blocks, the drift block, a break of ten
 * minutes, the other half, the drift block, the standards. A reading is the local response of the
 * block, moved by the operator's effect, by the run's and by its own; temperature rises by 0.8 K
 * over the morning and moves the free rod of a UCI probe, nothing else (the specimen's own
 * temperature coefficient, below 0.1 % per K, is left out).
 *
 * @param file name of its file
 * @param firstLine line of its first reading in that file
 * @param name name of the run
 * @param operator who holds the probe
 * @param start when the first reading is taken
 * @param perBlock readings per block
 */
record Run(
    String file, int firstLine, String name, String operator, LocalDateTime start, int perBlock) {
  private static final int PER_STANDARD = 5;
  private static final int PER_DRIFT_BLOCK = 3;
  private static final int BREAK_SECONDS = 600;
  private static final double WARMING_KELVIN = 0.8;
  private static final double MORNING_SECONDS = 5400;

  private record Visit(SimulatedBlock block, int readings, boolean afterBreak) {}

  /**
   * Takes the readings.
   *
   * @param seed seed of the laboratory
   * @param plan the member
   * @param blocks blocks to be read between the steel blocks
   * @param steel two standards, then the drift block
   * @param places where each block is read next; used up
   * @param faults faults to be planted
   */
  List<SimulatedReading> taken(
      long seed,
      MemberPlan plan,
      List<SimulatedBlock> blocks,
      List<SimulatedBlock> steel,
      Map<String, PlaceSequence> places,
      PlantedFaults faults) {
    Instrument instrument = Instrument.of(plan.method());
    String purpose = plan.name() + "/" + name + "/";
    double operatorEffect =
        NormalDraws.of(seed, "operator/" + instrument.probe() + "/" + operator)
            .normal(instrument.operatorSd());
    double runEffect = NormalDraws.of(seed, purpose + "effect").normal(instrument.runSd());
    NormalDraws chance = NormalDraws.of(seed, purpose + "readings");
    NormalDraws weather = NormalDraws.of(seed, purpose + "weather");
    double morning = 23 + StrictMath.max(-0.5, StrictMath.min(0.5, weather.normal(0.3)));
    LocalDateTime clock = start;
    List<SimulatedReading> taken = new ArrayList<>();
    for (Visit visit :
        visits(RandomOrder.of(blocks, NormalDraws.of(seed, purpose + "order")), steel)) {
      String block = visit.block().block().id();
      clock = clock.plusSeconds(visit.afterBreak() ? BREAK_SECONDS : 0);
      clock = clock.plusSeconds((long) weather.uniform(40, 90));
      double warming = Duration.between(start, clock).toSeconds() / MORNING_SECONDS - 0.5;
      double temperature =
          morning
              + WARMING_KELVIN * StrictMath.min(0.5, warming)
              + StrictMath.max(-0.1, StrictMath.min(0.1, weather.normal(0.04)));
      for (int i = 0; i < visit.readings(); i++) {
        clock = clock.plusSeconds((long) weather.uniform(14, 26));
        double effect = operatorEffect + runEffect + chance.normal(instrument.readingSd());
        Place place = places.get(block).next();
        double expected = visit.block().response(instrument.law(), place);
        double response =
            instrument.moved(expected, effect) * faults.responseFactor(name, block, i);
        String note = faults.note(name, block, i);
        if (note.isEmpty() && i == 0 && visit.afterBreak()) {
          note = "after a break of ten minutes";
        }
        Moment moment = new Moment(firstLine + taken.size(), clock, temperature, note);
        Reading reading = reading(instrument, block, response, place, moment);
        taken.add(new SimulatedReading(reading, response, expected));
      }
    }
    return taken;
  }

  private record Moment(int line, LocalDateTime at, double temperatureC, String note) {}

  /** The reading as the instrument shows it and the operator writes it down. */
  private Reading reading(
      Instrument instrument, String block, double response, Place place, Moment moment) {
    double temperature = moment.temperatureC();
    return new Reading(
        file,
        moment.line(),
        block,
        Rounding.to(1, instrument.displayed(response, temperature)),
        Optional.of(moment.at()),
        Optional.of(name),
        Optional.of(operator),
        Optional.of(instrument.probe()),
        OptionalDouble.of(Rounding.to(0.1, temperature)),
        rounded(instrument.freeFrequencyHz(temperature)),
        OptionalDouble.of(place.xMm()),
        OptionalDouble.of(place.yMm()),
        Optional.of("down"),
        Optional.of(moment.note()).filter(note -> !note.isEmpty()));
  }

  private static OptionalDouble rounded(OptionalDouble frequency) {
    return frequency.isPresent()
        ? OptionalDouble.of(Rounding.to(1, frequency.getAsDouble()))
        : frequency;
  }

  private List<Visit> visits(List<SimulatedBlock> order, List<SimulatedBlock> steel) {
    List<SimulatedBlock> standards = steel.subList(0, steel.size() - 1);
    SimulatedBlock drift = steel.get(steel.size() - 1);
    List<Visit> visits = new ArrayList<>();
    standards.forEach(block -> visits.add(new Visit(block, PER_STANDARD, false)));
    visits.add(new Visit(drift, PER_DRIFT_BLOCK, false));
    int half = (order.size() + 1) / 2;
    order.subList(0, half).forEach(block -> visits.add(new Visit(block, perBlock, false)));
    visits.add(new Visit(drift, PER_DRIFT_BLOCK, false));
    for (int i = half; i < order.size(); i++) {
      visits.add(new Visit(order.get(i), perBlock, i == half));
    }
    visits.add(new Visit(drift, PER_DRIFT_BLOCK, false));
    standards.forEach(block -> visits.add(new Visit(block, PER_STANDARD, false)));
    return visits;
  }
}
