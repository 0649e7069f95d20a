// The public face of the kernel: what may be used from outside, each name with what it is for. It works in Node, in a
// worker and in a page alike.

// Numbers that stay exact.
/** Exact ratios: making, writing and leaving exactness. */
export { decimalRatio, ratio, toNumber, writeRatio, type Ratio } from "./numeric/ratio.ts";

// Finding numbers, and dividing.
/** Every train of so many engagements within an error of a wanted ratio; as a whole, or step by step with progress. */
export { findTrains, largestOf, searchTrains, teethTotal, type FoundTrain, type FoundTrains, type TrainSearch } from "./numbers/trains.ts";
/** The same for several numbers of engagements. */
export { searchSizes, type SizesSearch } from "./numbers/sizes.ts";
/** Continued fractions, convergents and the mediant tree. */
export { continuedFraction, convergents, mediantPath, primeFactors, type MediantStep } from "./numbers/fractions.ts";
/** How a dividing head gives a count: plain, compound, differential. */
export { canDivide, divide, ORDINARY_HEAD, type Dividing, type Head, type PlainSetting } from "./numbers/dividing.ts";
/** Near and angular dividing, and the checks while cutting; why a count cannot be had. */
export {
  angleSettings, nearSettings, oppositeCheck, runningCheck, type AngleSetting, type NearSetting, type OppositeCheck, type RunningCheck,
} from "./numbers/approximate.ts";
export { cannotDivideSays, inTheWay, standNear, type NearRatio } from "./numbers/primes.ts";
/** The train as it is: every display's engagements from the input, exact. */
export { daysOf, trainTable, trainTo, yearsToOneDivision, type TrainStep, type WrittenTrain } from "./numbers/train-table.ts";
/** A train on an arm by Willis's rule. */
export type { WillisRow, WillisTable } from "./numbers/willis.ts";
/** A wanted ratio or period as it is typed. */
export { finerThanStated, periodOf, wantedPeriod, wantedRatio, type TypedWanted, type WantedNumber } from "./numbers/wanted.ts";
/** The counts that may be asked for, by ranges, cutters and head. */
export { allowedCounts, headOf, isAwkward, isServed, type CountLimits } from "./numbers/counts.ts";
/** What a train costs, ranking by it, reverted pairings, drift and room. */
export {
  bestAt, driftOf, MERITS, meritsOf, ranked, revertedPairing, roomOf, workshopOf, type Merit, type Pairing, type Weights, type Workshop,
} from "./numbers/merits.ts";
/** Trains on a carrier and differentials. */
export { differentialTrains, searchCarried, type CarriedSearch, type CarriedTrain, type CarriedTrains, type SumTrain } from "./numbers/epicyclic.ts";
/** Several displays at once on the fewest wheels. */
export {
  shareTrains, type SharedAnswer, type SharedEngagement, type SharedSearch, type SharedStep, type SharedTrains, type WantedDisplay,
} from "./numbers/several.ts";

// The sky and the dials.
/** What a display may stand for, its true turns and its mean days; the equation of time (minutes). */
export { equationOfTimeMin, meanDays, QUANTITIES, quantityOf, turnsAt, type Quantity } from "./sky/quantities.ts";
/** Universal time in days from noon on 1 January 2000, and the calendar. */
export { dayOfDate, dayOfMs, msOfDay, yearOf } from "./sky/calendar.ts";
/** Where a display's pointer stands on its dial. */
export { dialRate, pointerOf, shownAt, shownFrom, wayOf, zeroOf, type PointerPart, type Shown } from "./sky/shown.ts";
/** A display held against the sky over a span of years. */
export { compareWithSky, errorNow, type Comparison, type SkySpan } from "./sky/compare.ts";
/** Where every pointer should stand at a date, where the crank leaves it, and the nearest turn that sets one right. */
export { checkTable, nearestSetting, settingUp, turnsAtDay, type PointerSetting, type SettingUp } from "./sky/setting-up.ts";
/** The marks of an uneven ring by the law it follows. */
export { marksBy, type MarkLaw, type UnevenMark } from "./dials/uneven.ts";
/** Dials as they are drawn, said by the file or laid out. */
export { facesOf } from "./dials/faces.ts";
export { dialsFor } from "./dials/said.ts";
export { facesBy, roman, type Face, type FaceRing, type Laws, type Letter, type Mark } from "./dials/face.ts";

// What an instrument is.
/** An instrument as its file says it, field by field. */
export type {
  Aperture, Arbor, Case, Coupling, Crossings, Cutter, DayBookEntry, Dial, DialRing, Display, Division, Engagement, Frame, Gearing, Input, Instrument, Join, Part, PartKind,
  Pillar, Pivot, Plate, PlateOutline, Practice, Rides, Sense, ToothedPart, ToothForm,
} from "./instrument.ts";
/** Defaults of practice and gearing, and the small questions asked of an instrument everywhere. */
export { countOf, engagementId, GEARING, gearingOf, isToothed, PRACTICE, practiceOf } from "./instrument.ts";

// Toothed parts.
/** Every toothed part with its defaults filled in, by part id. */
export { teethOf } from "./teeth/toothing.ts";
/** Radii of a toothed part and the distance at which two of them work (mm); its form, and its true outline. */
export {
  drawnTipRadius, formOf, pitchRadius, profileOf, rootRadius, tipRadiusOf, toothOutline, trundleOutlines, workingDistance,
} from "./teeth/forms.ts";
/** The figures of clock practice that are not settled, as parameters; clock teeth by another practice. */
export { BRITISH_ARC, CLOCK_PRACTICE, TOPS, wheelTipSays, type ClockPractice, type Top } from "./teeth/clock-practice.ts";
export { cycloidalForm } from "./teeth/cycloidal.ts";
/** The openings of a crossed wheel, clockwise, and why they cannot be cut where they cannot. */
export { crossingOutlines, crossingsFault } from "./teeth/crossings.ts";
/** A clock wheel's theoretical addendum for its pinion or lantern, in modules. */
export { lanternGreatestAddendum, theoreticalAddendum } from "./teeth/addendum.ts";
export type { FormOfTooth, Teeth } from "./teeth/teeth.ts";
export type { Piece, PieceName, Profile, ProfilePoint } from "./teeth/profile.ts";

// Depth and lost motion.
/** How deep engaged pairs stand: backlash, contact ratio, clearance, at the distance as it stands and at the worst. */
export { depthOf, depthsOf, type Depth } from "./depth/depth.ts";
/** Overlap of two engaged faces, as drawn and at the worst of both shakes (mm). */
export { faceOverlapOf, type FaceOverlap } from "./depth/face.ts";
/** One pair depthed: how it runs at a distance, its window, the tolerance of the hole, and all of it in words. */
export { depthingOf, runningOf, type Depthing, type Running, type State } from "./depth/depthing.ts";
/** A pair over one pitch from its true outlines: lead, rate, free arc and touches, phase by phase. */
export type { Contact } from "./depth/contact.ts";
export type { Touch } from "./depth/touch.ts";
/** Free arc round the full cycle of a pair, and the assembly that spreads it best. */
export type { Cycle } from "./depth/cycle.ts";
export type { Window } from "./depth/window.ts";
/** A pair at a distance as a drawing wants it, for every frame of a drag: contact, its path, where the driven's teeth stand. */
export { drivenPlaceRad, standingAt, type OnPath, type Standing } from "./depth/standing.ts";
/** What a pair's backlash is held against, at any distance. */
export { figuresOf, type Figures } from "./depth/figures.ts";
export { pairOf, type Pair as EngagedPair } from "./depth/pair.ts";
/** Lost motion at a display's pointer (degrees). */
export { lostMotionOf } from "./depth/lost-motion.ts";

// Motion.
/** Where every arbor stands and how far round it has turned, at any turns of the input: at once, or in a frame loop without allocating. */
export { poseAt, poseInto, POSE_STRIDE } from "./motion/pose.ts";
export { motionOf, type Motion } from "./motion/motion.ts";
/** How far each toothed part is turned on its arbor so that drawn teeth are truly in mesh (rad, by part id). */
export { toothPhases } from "./motion/tooth-phases.ts";
/** What a display shows. */
export { readingAt, readingIn, type Reading } from "./motion/reading.ts";

// Meshes.
/** Everything that can be drawn of a movement, the closed mesh of each, and a text that is the same where the mesh is. */
export { meshOf, meshTextOf, thingsOf, type Metal, type Thing, type ThingKind } from "./mesh/things.ts";
/** A closed triangle mesh and how several become one. */
export { joined as joinedMeshes, type Mesh } from "./mesh/mesh.ts";
/** Solids from flat regions and from turned profiles, for what is drawn besides an instrument. */
export { prism } from "./mesh/prism.ts";
export { turned, type Profile as TurnedProfile } from "./mesh/lathe.ts";
/** What a mesh measures (mm², mm³), and the check of what it promises. */
export { areaMmSq, volumeMmCu } from "./mesh/measures.ts";
export { faultsOfMesh } from "./mesh/faults.ts";

// A movement: an instrument worked out.
/** Works an instrument out (rates, places, shakes, distances), and again where only some arbors have moved. */
export { replanted, workOut } from "./workout.ts";
export type { Bind, Movement, WorkedArbor, WorkedDisplay, WorkedEngagement } from "./movement.ts";
/** One step of a drag in plan, in gear or trying the depth: new places, and what holds the arbor back. */
export { dragArbor, type Drag, type DragWay } from "./planting/drag.ts";
/** New places written into an instrument. */
export { withPlaces } from "./planting/places.ts";

// What is swept.
/** Everything as the cylinders that it sweeps about its axis, for plans and elevations (mm). */
export { thingsOf as sweptThings, type Cylinder, type Thing as SweptThing } from "./bodies/thing.ts";

// What the examiner says.
/** Findings and the sheet they stand on, as the terminal and the screen give them. */
export type { Finding, FindingCode, Remedy, Severity, Sheet, When } from "./finding.ts";

// Examining.
/** Everything that is found out about a movement, gravest first. */
export { examine, examineSteps, type HowToExamine } from "./examine/sheet.ts";
/** Moves that cure one gap finding, each tried; and the instrument with one of them carried out. */
export { applied } from "./examine/applied.ts";
export { remediesFor } from "./examine/remedies.ts";
/** The gaps between swept solids: those that foul or are tight, or all of them with their figures. */
export { allGapsOf, gapsOf, sceneOf, type Gaps, type JudgedPair, type Scene } from "./clearance/gaps.ts";
export type { Clear, Verdict } from "./clearance/pair.ts";

// Places in plan.
/** Where an arbor may stand: true regions that foul or are tight, and the arcs it slides on; the smallest gap in plan. */
export { mayStand, type MayStand, type Slide } from "./clearance/stand.ts";
export { smallestGap, type SmallestGap } from "./clearance/smallest.ts";
/** What forbids an arbor's places, and how it would stand at one: for feeling the way while dragging. */
export { groundOf, severityAt, type Ground, type Shape } from "./clearance/ground.ts";
/** Regions as loops of arcs and lines: the text of an SVG path, and the area (mm²); where two circles cross. */
export { areaOfLoops, circlesCross, pathText, type Circle, type Loop, type Piece as RegionPiece } from "./planar/regions.ts";

// Searching.
/** Places for all arbors that may move, with the best least gap: step by step with the best so far, or as a whole. */
export { findPlaces, searchPlaces, type HowToPlant, type Planted, type PlantingStep, type Quarrel } from "./search/places.ts";

// The workshop: figures of the sheets.
/** Every figure a toothed part is made from. */
export { sineBarMm, wheelFigures, type CrossingFigures, type Mate, type WheelFigures } from "./workshop/wheel.ts";
/** The dividing card for a count. */
export { cardOf, type Card, type Check } from "./workshop/card.ts";
/** Span over teeth and distance over pins; the form cutter for a count. */
export { overPins, spanOf, usualPin, usualSpan, type Pins, type Span } from "./workshop/span.ts";
export { bandOf, cutterFor, type Band, type Wanted } from "./workshop/cutters.ts";
/** Limits and fits by ISO 286-2; where parts sit on arbors and collets. */
export { fitOf, FITS_SOURCE, holeLimits, shaftLimits, type Fit, type Limits } from "./workshop/fits.ts";
export { arborDiameterAt, carriedBy, PROUD_MM, seatOf, spigotMm, type Seat } from "./workshop/seats.ts";
/** Materials, densities, masses; contraction and bends. */
export { DENSITY_SOURCE, densityOf, massG, materialOf, stockOf } from "./workshop/metal.ts";
export { bendAllowanceMm, bendDeductionMm, CONTRACTION, CONTRACTION_SOURCE, neutral, patternMm, type CastMetal } from "./workshop/allowances.ts";
/** Between what distances every engagement may stand. */
export { windowsOf } from "./workshop/windows.ts";
/** Every figure an arbor, post, stud or pipe is turned from. */
export {
  arborFigures, barFor, type ArborFigures, type ColletFigures, type PivotFigures, type SeatFigures, type SquareFigures,
} from "./workshop/arbor.ts";
export type { Step as TurnedStep } from "./workshop/turned.ts";
/** The hole table of a plate; the box round an outline, and its area. */
export { areaOf, boxOf, plateFigures, type CentreDistance, type HoleFigures, type PlateFigures } from "./workshop/plate.ts";
/** What plan and developed elevation are drawn from. */
export { columnsOf, planThings, type Column, type PlanThing } from "./workshop/layout.ts";
/** Discs, slots, arms, pointers and ratchets; cottered squares; a round case both ways. */
export { isPiece, pieceFigures, type Piece as FlatPiece, type PieceFigures, type RatchetFigures } from "./workshop/pieces.ts";
export { cotterFigures, cotterTravelMm, homeMm, squarePlayDeg, washerMm, type CotterFigures } from "./workshop/cotter.ts";
export { housingFigures, type HousingFigures } from "./workshop/housing.ts";
/** Lists of the whole: parts, stock, cutters, train, setting up, heats. */
export {
  cutterList, heatTable, partsList, settingTable, stockList, trainLines, type CutterLine, type HeatLine, type ListedPart, type SettingLine, type StockLine, type TrainLine,
} from "./workshop/lists.ts";
/** The blade and tail of a hand, along +x. */
export { handOutline } from "./mesh/hand.ts";
/** Closed outlines, their area. */
export { signedAreaMmSq, type Outline } from "./planar/outline.ts";
/** Levels for all parts under the least height between the plates: step by step with the best so far, or as a whole. */
export { findHeights, searchHeights, type HowToLevel, type Levelled, type LevellingStep } from "./search/heights.ts";
/** Heights at which a part would foul, be tight or stand free on its arbor. */
export { mayRise, type Band as HeightBand, type MayRise } from "./clearance/bands.ts";

// Putting together.
/** Steps of putting together, what must come out before a named thing, and a straight line for the tool to each join. */
export { puttingTogether, takingDown, type PuttingTogether } from "./assembly/steps.ts";
export type { Step } from "./assembly/step.ts";
export { accessOf, type Access, type Tool } from "./assembly/access.ts";
/** The order of heats on one arbor: every later heat held against every earlier join, and the order that spoils least. */
export { heatPairs, joinHeat, suggestedHeats, type HeatPair, type JoinHeat } from "./workshop/heats.ts";
export { heatLadder, type HeatLadder, type LadderLimit, type Rung } from "./workshop/ladder.ts";
/** Places and levels worked again for what was changed, as long as that leaves less amiss. */
export { searchSettled, type Settled, type SettlingStep } from "./search/settle.ts";
/** Ways out of what fouls, given what is made: each examined, the cheapest first; step by step, or as a whole. */
export { searchWaysOut, waysOut, type AllWaysOut, type WayOut, type WaysOut, type WaysStep } from "./search/ways.ts";
export type { Change, Work } from "./search/changes.ts";

// Error at the pointer.
/** Drift, wander, lost motion, dial off centre and parallax of every display, greatest first; and the phases that wander least. */
export { HOW_READ, pointerErrors, type Cause, type CauseName, type HowRead, type PointerError } from "./depth/pointer.ts";
export { wanderOf, type Wander, type Waver } from "./depth/wander.ts";
