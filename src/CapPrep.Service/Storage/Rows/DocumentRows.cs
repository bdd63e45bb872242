namespace CapPrep.Service.Storage.Rows;

/// <summary>
/// The bytes of a document under their own hash. It has no shop: it is reached only through <see cref="JobDocumentRow"/>.
/// </summary>
internal sealed class DocumentRow
{
    /// <summary>SHA-256 of the plain bytes, lower-case hex.</summary>
    public required string Sha256 { get; set; }

    public required string ContentType { get; set; }

    /// <summary><c>identity</c> or <c>deflate</c>.</summary>
    public required string Encoding { get; set; }

    /// <summary>Length of the plain bytes.</summary>
    public required long Length { get; set; }

    public required byte[] Bytes { get; set; }
}

/// <summary>That a job has a document of some kind.</summary>
internal sealed class JobDocumentRow : ShopRow
{
    public required string Job { get; set; }

    /// <summary>A word of <c>DocumentKinds</c>.</summary>
    public required string Kind { get; set; }

    public required string Sha256 { get; set; }

    /// <summary>Null: kept as long as the job.</summary>
    public DateTimeOffset? Expires { get; set; }
}
