namespace CapPrep.Service.Storage.Rows;

/// <summary>What a person may say of a finished job.</summary>
internal enum DecisionWord
{
    /// <summary>These findings may stay.</summary>
    Accept,

    /// <summary>They may not, whatever was said before.</summary>
    Reject,

    /// <summary>A cap sewn from the tape to sew was approved.</summary>
    ApproveSample,
}

/// <summary>
/// One point of a person's word on a job, bound to the stitches and the cap it was said of. The points of one decision
/// share <see cref="Said"/>.
/// </summary>
internal sealed class DecisionRow : ShopRow
{
    /// <summary>Id of the decision and the place of this point in it.</summary>
    public required string Id { get; set; }

    /// <summary>Id of the decision, as answers show it.</summary>
    public required string Said { get; set; }

    public required string Job { get; set; }

    /// <summary>Of the job, which may be erased by the time somebody asks.</summary>
    public required string OrderNumber { get; set; }

    public required DecisionWord Decision { get; set; }

    /// <summary>Who said it, as written by the caller.</summary>
    public required string By { get; set; }

    public string? Reason { get; set; }

    /// <summary>Number of the finding in the job's result; null: the whole job.</summary>
    public int? Finding { get; set; }

    /// <summary>Null: the whole job.</summary>
    public string? Rule { get; set; }

    /// <summary>Number of the element, from 1; null: wherever the rule meets something in these stitches.</summary>
    public int? Element { get; set; }

    public required string ReceivedStitchesSha { get; set; }

    /// <summary>Null when there was no tape to sew.</summary>
    public string? SewnStitchesSha { get; set; }

    /// <summary>Empty when the ticket's article number was of no style.</summary>
    public required string CapStyle { get; set; }

    public required string Location { get; set; }

    public required string Technique { get; set; }

    /// <summary>Id of the machine of the job.</summary>
    public required string Machine { get; set; }

    public required int RuleBookVersion { get; set; }

    /// <summary>Counts for the next check of the same order line only.</summary>
    public bool OneJob { get; set; }

    /// <summary>How many earlier points this decision ended; on its first point.</summary>
    public int Ends { get; set; }

    /// <summary>What was seen when it was said, as JSON; null where nothing is needed later.</summary>
    public byte[]? Seen { get; set; }

    public required DateTimeOffset At { get; set; }

    /// <summary>When a later decision ended it; null: in force.</summary>
    public DateTimeOffset? Ended { get; set; }
}
