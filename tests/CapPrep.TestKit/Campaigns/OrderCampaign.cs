using System.Globalization;
using CapPrep.Engine;
using CapPrep.Engine.Sequence.Planning;
using CapPrep.TestKit.Tapes;

namespace CapPrep.TestKit.Campaigns;

/// <summary>
/// Orders designs made by chance and holds every answer to what is promised: never a color more, nothing lost by a
/// second reader's count, every pair kept, and a written tape that is left as it is when it comes again.
/// </summary>
public static class OrderCampaign
{
    public static Task<CampaignReport> Run(int count, Action<string> say)
    {
        var faults = new List<string>();
        var restless = new List<string>();
        var (changed, used, settled, kept) = (0, 0, 0, 0);
        for (var seed = 1; seed <= count; seed++)
        {
            var tape = RandomDesign.Of((ulong)seed);
            try
            {
                var preparation = Prepared.Of(tape);
                faults.AddRange(Faults(preparation, tape).Select(fault => Told(seed, fault)));
                if (preparation.ProposedTape is not { } proposed)
                    continue;
                changed++;
                used += preparation.Order!.Used == UsedOrder.Proposed ? 1 : 0;
                settled += preparation.IsSettled ? 1 : 0;
                if (preparation is { Order.Used: UsedOrder.Proposed, IsSettled: false })
                    restless.Add(Text(seed));
                if (preparation is not { Order.Used: UsedOrder.Proposed, IsSettled: true })
                    continue;
                if (Prepared.Of(proposed).Order!.Used == UsedOrder.Received)
                    kept++;
                else
                    faults.Add(Told(seed, "A settled order is changed again when it is sent again."));
            }
            catch (EngineFaultException fault)
            {
                faults.Add(Told(seed, fault.Message));
            }
        }

        say(string.Create(CultureInfo.InvariantCulture, $"{count} designs ordered."));
        return Task.FromResult(new CampaignReport(
            [
                ("designs", Text(count)),
                ("another order proposed", Text(changed)),
                ("used", Text(used)),
                ("settled after one round", Text(settled)),
                ("used and not settled", string.Join(' ', restless)),
                ("used, settled, and left alone when sent again", Text(kept)),
            ],
            faults));
    }

    private static IEnumerable<string> Faults(Preparation preparation, byte[] tape)
    {
        if (preparation.Order is not { } order)
            yield break;
        if (order.Proposed.ColorChanges > order.Received.ColorChanges)
            yield return "More colors than received.";
        var place = order.Order.Select((element, at) => (element, at)).ToDictionary(one => one.element, one => one.at);
        if (preparation.Reading.MustFollow.Any(pair => place[pair.Before] > place[pair.After]))
            yield return "A pair that must keep its order does not.";
        if (preparation.LossCheck is { Passed: false })
            yield return "The loss check failed and the tape came out.";
        if (preparation.ProposedTape is { } proposed && preparation.LossCheck is { } check && order.Used == UsedOrder.Proposed)
        {
            var (before, after) = (Penetrations(tape), Penetrations(proposed));
            if (after != before - check.Dropped + check.TiesAdded)
                yield return string.Create(CultureInfo.InvariantCulture, $"A second reader counts {after} penetrations; {before} came, {check.Dropped} were dropped, {check.TiesAdded} added.");
        }
    }

    private static int Penetrations(byte[] tape) => OtherTapeReader.Read(tape).Penetrations.Count;

    private static string Told(int seed, string fault) => string.Create(CultureInfo.InvariantCulture, $"design {seed}: {fault}");

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
