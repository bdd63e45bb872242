namespace CapPrep.TestKit.Service;

/// <summary>What a receiver may hold a sender to: one id has one body, however often it comes.</summary>
public sealed class Ledger(IReadOnlyList<ReceivedCall> calls)
{
    /// <summary>Different ids, in the order of their first calls.</summary>
    public IReadOnlyList<string> Ids => [.. calls.Select(call => call.Id).Distinct()];

    public int TimesSeen(string id) => calls.Count(call => call.Id == id);

    /// <summary>What is wrong; empty: nothing.</summary>
    public IReadOnlyList<string> Faults()
    {
        var faults = new List<string>();
        foreach (var copies in calls.GroupBy(call => call.Id))
        {
            if (copies.Key.Length == 0)
                faults.Add("a call has no id");
            if (copies.Select(call => Convert.ToHexString(call.Body)).Distinct().Count() > 1)
                faults.Add($"{copies.Key} came with different bodies");
        }

        return faults;
    }

    /// <summary>As above, and what was owed and did not come, or came and was not owed.</summary>
    public IReadOnlyList<string> Faults(IReadOnlyCollection<string> owed) =>
    [
        .. Faults(),
        .. owed.Except(Ids).Select(id => $"{id} never came"),
        .. Ids.Except(owed).Select(id => $"{id} was never owed"),
    ];
}
