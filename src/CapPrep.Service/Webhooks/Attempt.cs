using System.Net;
using System.Net.Http.Headers;
using CapPrep.Service.Plumbing;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace CapPrep.Service.Webhooks;

/// <summary>How a call ended.</summary>
internal enum Outcome
{
    Delivered,
    Refused,
    Redirect,
    Timeout,
    Unreachable,
    AddressNotAllowed,
    Tls,
    TooLong,
}

/// <summary>What is sent.</summary>
/// <param name="EventId">The same at every attempt.</param>
/// <param name="Body">The event's frozen bytes.</param>
/// <param name="Secrets">Live ones, with their prefix.</param>
/// <param name="Traceparent">Trace of the job that the event is about; null: none.</param>
internal sealed record Call(
    Uri Url, string EventId, byte[] Body, IReadOnlyList<string> Secrets, string? Traceparent);

/// <summary>What came of it.</summary>
/// <param name="At">When it began.</param>
/// <param name="Phases">JSON, as <see cref="CallTrace.Phases"/>.</param>
/// <param name="RetryAfter">What a receiver that is overloaded asked for.</param>
/// <param name="Excerpt">Beginning of the answer's body; null: no answer.</param>
internal sealed record AttemptReport(
    DateTimeOffset At, Outcome Outcome, string? Address, string? Tls, byte[] Phases, HttpStatusCode? Status, TimeSpan? RetryAfter, string? Excerpt);

/// <summary>
/// Makes one call: signed, within one deadline over connection, head and body, never following a redirect. When the
/// connection could not be made it tries once more at once; nothing was sent then, so nothing can arrive twice.
/// </summary>
internal sealed class Attempt(Door door, Settings settings, TimeProvider clock)
{
    private readonly ResiliencePipeline<AttemptReport> _pipeline = new ResiliencePipelineBuilder<AttemptReport>()
        .AddTimeout(TimeSpan.FromSeconds(settings.Webhooks.TimeoutSeconds))
        .AddRetry(new RetryStrategyOptions<AttemptReport>
        {
            ShouldHandle = tried => ValueTask.FromResult(tried.Outcome.Result is { Outcome: Outcome.Unreachable, Address: null }),
            MaxRetryAttempts = 1,
            Delay = TimeSpan.Zero,
        })
        .Build();

    public async Task<AttemptReport> Make(Call call, CancellationToken cancel)
    {
        var at = clock.GetUtcNow();
        var trace = new CallTrace();
        try
        {
            return await _pipeline.ExecuteAsync(async token => await Once(call, at, trace = new CallTrace(), token), cancel);
        }
        catch (TimeoutRejectedException)
        {
            return Failed(at, Outcome.Timeout, trace);
        }
    }

    private async Task<AttemptReport> Once(Call call, DateTimeOffset at, CallTrace trace, CancellationToken cancel)
    {
        try
        {
            using var invoker = door.Open(trace);
            using var request = Request(call, at);
            using var response = await invoker.SendAsync(request, cancel);
            trace.HeadCame();
            var excerpt = await Excerpt.Read(response.Content, cancel);
            return new AttemptReport(
                at, OutcomeOf(response.StatusCode), trace.Address, trace.Tls, trace.Phases(), response.StatusCode, RetryAfter(response), excerpt);
        }
        catch (HttpRequestException fault)
        {
            return Failed(at, OutcomeOf(fault, trace), trace);
        }
    }

    private static HttpRequestMessage Request(Call call, DateTimeOffset at)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, call.Url)
        {
            Version = HttpVersion.Version11,
            Content = new ByteArrayContent(call.Body) { Headers = { ContentType = new MediaTypeHeaderValue(Json.ContentType) } },
        };
        var seconds = at.ToUnixTimeSeconds().ToString(System.Globalization.CultureInfo.InvariantCulture);
        request.Headers.ConnectionClose = true;
        request.Headers.Add("webhook-id", call.EventId);
        request.Headers.Add("webhook-timestamp", seconds);
        request.Headers.Add("webhook-signature", Signer.Sign(call.Secrets, call.EventId, at, call.Body));
        request.Headers.Add("user-agent", "CapPrep/1");
        if (call.Traceparent is not null)
            request.Headers.TryAddWithoutValidation("traceparent", call.Traceparent);
        return request;
    }

    private static Outcome OutcomeOf(HttpStatusCode status) => (int)status switch
    {
        >= 200 and < 300 => Outcome.Delivered,
        >= 300 and < 400 => Outcome.Redirect,
        _ => Outcome.Refused,
    };

    private static Outcome OutcomeOf(HttpRequestException fault, CallTrace trace) => fault.HttpRequestError switch
    {
        _ when trace.IsForbidden => Outcome.AddressNotAllowed,
        HttpRequestError.SecureConnectionError => Outcome.Tls,
        HttpRequestError.ConfigurationLimitExceeded => Outcome.TooLong,
        _ => Outcome.Unreachable,
    };

    private TimeSpan? RetryAfter(HttpResponseMessage response)
    {
        if (response.StatusCode is not (HttpStatusCode.TooManyRequests or HttpStatusCode.ServiceUnavailable))
            return null;
        return response.Headers.RetryAfter switch
        {
            { Delta: { } wait } => wait,
            { Date: { } date } => date - clock.GetUtcNow(),
            _ => null,
        };
    }

    private static AttemptReport Failed(DateTimeOffset at, Outcome outcome, CallTrace trace) =>
        new(at, outcome, trace.Address, trace.Tls, trace.Phases(), null, null, null);
}
