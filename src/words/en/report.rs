//! The report's phrases in English.

use crate::words::phrase::phrases;

phrases! {
    Title: "Service report";
    Subject: "condenser water";
    Page: "page";
    Of: "of";
    Date: "Date";
    Place: "Place";
    Complaint: "Complaint";
    MachinesOut: "Out on arrival";
    ProvenWord: "PROVEN";
    NotProvenWord: "NOT PROVEN YET";
    ActWord: "ACT NOW";
    NoteWord: "NOTE";
    CauseHeading: "What was wrong";
    NoCause: "No cause has been named yet.";
    HowWeKnow: "How we know";
    WorkDone: "What was done";
    RefillProves: "The refill test passed: the makeup chain called, filled and stopped by itself.";
    RefillDoesNot: "The refill test does not yet prove it: see below.";
    RefillFailed: "The refill test failed: the makeup chain does not keep the basin full by itself. See below.";
    RefillNone: "No refill test was run, so the repair is not proven.";
    RefillHeading: "Refill test";
    RefillNotRun: "Not run on this visit.";
    Reasons: "Why";
    ReadingsHeading: "Readings";
    NumbersHeading: "What the readings come to";
    TraceHeading: "How the cause was traced";
    LeavingHeading: "Leaving round";
    CautionHeading: "Cautions";
    NotesHeading: "Notes";
    Reading: "Reading";
    Time: "Time";
    Check: "Check";
    Answer: "Answer";
    Stage: "When";
    StageFound: "As found";
    StageTesting: "While testing";
    Item: "Item";
    State: "State";
    NotAnswered: "Not answered";
    SuspectsLeft: "Likeliest by these answers";
    FillFlow: "Fill flow";
    Needed: "Makeup needed";
    Approach: "Approach";
    Range: "Range";
    Found: "As found";
    Left: "As left";
    ClockMoved: "The phone's clocks did not agree during the test: it slept, or its time was changed. Times across that are less sure.";
    CautionLegionella: "The basin was drawn down and refilled. Tell whoever keeps the water treatment and the Legionella plan (ANSI/ASHRAE Standard 188 or the local rule); biocide and inhibitor were diluted.";
    CautionWater: "Tell whoever keeps the water treatment and the Legionella plan (ANSI/ASHRAE Standard 188 or the local rule) how the basin was found.";
    CautionElectrical: "Work on the level control is work on live parts unless it is locked out and proven dead. Qualified people only, by local code and NFPA 70E or its local equal.";
    CautionRoof: "Roof and tower: fall protection, fan locked out before reaching in. The basin may be a confined space.";
    CautionLimits: "Numbers are from field readings and carry their error. The nameplate and the maker's instructions govern over this report.";
    Interval: "95 % interval";
}
