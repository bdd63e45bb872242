using System.Text.Json.Nodes;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Trade;
using static CapPrep.Service.Docs.Schemas.Shape;

namespace CapPrep.Service.Docs.Schemas;

/// <summary>What became of the job before.</summary>
internal static class RevisionSchemas
{
    private const int MostStitches = 2_000_000;

    public static IEnumerable<KeyValuePair<string, JsonObject>> All =>
    [
        new("Revision", Open(
            Req("of", Ref("JobId"), "The job that is compared with."),
            Req("sameStitches", Flag(), "true: both tapes sew the same, as with a recheck."),
            Req("solved", Points(), "Holds and warns of the job before that are gone."),
            Req("stillOpen", Points(), "Holds and warns that are still there, at the same place."),
            Req("newFindings", Points(), "Holds and warns that were not there before, or not at this place."),
            Req("changedOutsideTheBrief", List(Ref("OutsideChange"), 50), "What differs although no point asked for it, in the order of the earlier tape."),
            Opt("changesLeftOut", Count()))
            .Says("Points are followed by rule and place: boxes that share half of the smaller one are one place.")),
        new("RevisedPoint", Open(
            Req("rule", Ref("RuleId")),
            Req("severity", Word<Severity>()),
            Opt("findingBefore", Integer(1, 10_000), "Number in the result of the job before."),
            Opt("finding", Integer(1, 10_000), "Number in this result."),
            Req("message", Text(LongText)),
            Req("boxesMm", List(Ref("Box"), 20), "Of a point that is gone: where it would lie now."))),
        new("OutsideChange", Open(
            Req("what", Word<OutsideKind>()),
            Req("message", Text(LongText)),
            Opt("element", Integer(1, 1_000_000), "Number in the earlier tape; of an added element in this one. Absent: the whole design."),
            Opt("boxMm", Ref("Box"), "On the cap now."),
            Opt("stitches", Open(Req("first", Integer(1, MostStitches)), Req("last", Integer(1, MostStitches))), "Penetrations of the earlier tape; of an added element of this one."))),
    ];

    private static JsonObject Points() => List(Ref("RevisedPoint"), 500);
}
