using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace CapPrep.TestKit.Service;

/// <summary>One call as it came in.</summary>
public sealed record ReceivedCall(string Id, string Timestamp, string Signature, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public string Text => Encoding.UTF8.GetString(Body);

    /// <summary>Whether one of the signatures was made with the secret, checked by the Standard Webhooks text alone.</summary>
    public bool IsSignedWith(string secret)
    {
        var key = Convert.FromBase64String(secret["whsec_".Length..]);
        byte[] signed = [.. Encoding.UTF8.GetBytes($"{Id}.{Timestamp}."), .. Body];
        var wanted = "v1," + Convert.ToBase64String(HMACSHA256.HashData(key, signed));
        return Signature.Split(' ').Contains(wanted);
    }
}

/// <summary>What a receiver answers.</summary>
public sealed record Reply
{
    public static readonly Reply Ok = new();

    public int Status { get; init; } = 204;

    public string Body { get; init; } = "";

    public IReadOnlyDictionary<string, string> Headers { get; init; } = new Dictionary<string, string>();

    /// <summary>Time before the head is sent.</summary>
    public TimeSpan Delay { get; init; }

    /// <summary>After the head, one byte every so long, without end; null: the body at once.</summary>
    public TimeSpan? Drip { get; init; }

    /// <summary>As many bytes as the sender takes, without end.</summary>
    public bool Endless { get; init; }

    /// <summary>Breaks the connection off instead of answering.</summary>
    public bool Reset { get; init; }

    public static Reply Of(int status, string body = "") => new() { Status = status, Body = body };

    /// <summary>The receiver asks for a wait.</summary>
    public static Reply Later(int status, int seconds) =>
        new() { Status = status, Headers = new Dictionary<string, string> { ["Retry-After"] = seconds.ToString() } };

    public async Task Send(HttpContext context)
    {
        var cancel = context.RequestAborted;
        await Task.Delay(Delay, cancel);
        if (Reset)
        {
            context.Abort();
            return;
        }

        context.Response.StatusCode = Status;
        foreach (var (name, value) in Headers)
            context.Response.Headers[name] = value;
        if (Body.Length > 0)
            await context.Response.WriteAsync(Body, cancel);
        while ((Endless || Drip is not null) && !cancel.IsCancellationRequested)
        {
            await context.Response.WriteAsync(Endless ? new string('x', 8192) : ".", cancel);
            await context.Response.Body.FlushAsync(cancel);
            await Task.Delay(Drip ?? TimeSpan.Zero, cancel);
        }
    }
}
