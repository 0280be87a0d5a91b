using System.Text;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>What guests may publish, leave with the broker and subscribe to.</summary>
internal sealed class GuestRules(BrokerCounts counts)
{
    private static readonly object FiltersKey = new();

    private readonly Allowance _retained = new(BrokerLimits.RetainedMessages, BrokerLimits.RetainedBytes);

    /// <summary>
    /// Whether only the daemon may publish there: all under the root, the root itself, and what a careless reader could take for it, in another case or with
    /// slashes before it.
    /// </summary>
    public static bool IsOwn(string topic)
    {
        var levels = topic.AsSpan().TrimStart('/');
        var end = levels.IndexOf('/');
        return (end < 0 ? levels : levels[..end]).Equals(MqttTopics.Root.AsSpan().TrimEnd('/'), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Why a message is not taken; success when it is.</summary>
    public MqttPubAckReasonCode Judge(MqttApplicationMessage message)
    {
        if (IsOwn(message.Topic))
            return MqttPubAckReasonCode.NotAuthorized;
        if (!message.Retain || Retains(message))
            return MqttPubAckReasonCode.Success;
        counts.RefusedToRetain();
        return MqttPubAckReasonCode.QuotaExceeded;
    }

    /// <summary>Whether the client may have one filter more.</summary>
    public bool Subscribes(InterceptingSubscriptionEventArgs wish)
    {
        var filter = wish.TopicFilter.Topic;
        if (Filters(wish.SessionItems).Take(filter, Encoding.UTF8.GetByteCount(filter)))
            return true;
        counts.RefusedSubscription();
        return false;
    }

    public static void Unsubscribed(ClientUnsubscribedTopicEventArgs end) => Filters(end.SessionItems).GiveBack(end.TopicFilter);

    // An empty message takes away what is retained (MQTT 3.1.1, section 3.3.1.3).
    private bool Retains(MqttApplicationMessage message)
    {
        if (!message.Payload.IsEmpty)
            return _retained.Take(message.Topic, Size(message));
        _retained.GiveBack(message.Topic);
        return true;
    }

    private static Allowance Filters(System.Collections.IDictionary session)
    {
        if (session[FiltersKey] is not Allowance filters)
            session[FiltersKey] = filters = new Allowance(BrokerLimits.Filters, BrokerLimits.FilterBytes);
        return filters;
    }

    private static int Size(MqttApplicationMessage message) =>
        (int)message.Payload.Length + Length(message.Topic) + Length(message.ContentType) + Length(message.ResponseTopic) + (message.CorrelationData?.Length ?? 0)
        + (message.UserProperties?.Sum(p => Length(p.Name) + p.ValueBuffer.Length) ?? 0);

    private static int Length(string? text) => text is null ? 0 : Encoding.UTF8.GetByteCount(text);
}
