#pragma once
// Finding by a few letters: words typed are matched against the words of a text, whole, begun, inside, or with a slip.
#include <QString>
#include <QVector>

#include <vector>

namespace app {

struct Stretch // of the text, matched
{
    int from = 0, length = 0;
    friend bool operator==(const Stretch &, const Stretch &) = default;
};

struct Match
{
    int score = 0;    // 0: no match; larger is nearer
    bool all = false; // every word that was typed was found
    std::vector<Stretch> head, tail;
};

// `head` and `tail` are shown, `also` is only searched: other words people use.
Match matchOf(const QString &typed, const QString &head, const QString &tail, const QStringList &also);

struct Hit
{
    QString id;         // given back
    QString head, tail; // shown: what is wrong; which appliance
    QString note;       // at the right: "first look 1 min"
    QStringList also;
    Match match;
};

// The nearest first, at most `most`; without a full match the two nearest. Nothing typed: all in their order.
std::vector<Hit> nearest(std::vector<Hit> all, const QString &typed, std::size_t most);

} // namespace app
