#include "app/walk/hits.h"

#include <QStringList>

#include <algorithm>

namespace app {
namespace {

constexpr int kWhole = 8, kBegun = 6, kInside = 3, kSlip = 2;
constexpr std::size_t kNearOnes = 2;

QString plain(const QString &text)
{
    QString out;
    for (const QChar c : text.normalized(QString::NormalizationForm_D).toLower())
        if (c.category() != QChar::Mark_NonSpacing)
            out += c.isLetterOrNumber() ? c : QLatin1Char(' ');
    return out;
}

struct Word
{
    QString text;
    int at = 0; // in the original; good enough for marking where nothing was decomposed
};

std::vector<Word> wordsOf(const QString &text)
{
    std::vector<Word> words;
    const QString flat = plain(text);
    for (int i = 0; i < flat.size();) {
        if (flat[i] == QLatin1Char(' ')) {
            ++i;
            continue;
        }
        int end = i;
        while (end < flat.size() && flat[end] != QLatin1Char(' '))
            ++end;
        words.push_back({flat.mid(i, end - i), i});
        i = end;
    }
    return words;
}

// One letter wrong, missing, or too many, at the beginning of the word or all of it.
bool slips(const QString &typed, const QString &word)
{
    if (typed.size() < 4 || word.size() + 1 < typed.size())
        return false;
    for (const qsizetype length : {typed.size() - 1, typed.size(), typed.size() + 1}) {
        const QString part = word.left(length);
        int at = 0;
        while (at < typed.size() && at < part.size() && typed[at] == part[at])
            ++at;
        const QStringView a = QStringView(typed).mid(at), b = QStringView(part).mid(at);
        if (a.isEmpty() || b.isEmpty() || a.mid(1) == b.mid(1) || a.mid(1) == b || a == b.mid(1))
            return std::abs(typed.size() - part.size()) <= 1;
    }
    return false;
}

struct Best
{
    int score = 0;
    Stretch where;
};

Best bestIn(const QString &typed, const std::vector<Word> &words)
{
    Best best;
    const auto take = [&](int score, int from, qsizetype length) {
        if (score > best.score)
            best = {score, {from, static_cast<int>(length)}};
    };
    for (const Word &word : words) {
        if (word.text == typed)
            take(kWhole, word.at, typed.size());
        else if (word.text.startsWith(typed))
            take(kBegun, word.at, typed.size());
        else if (typed.size() > 2 && word.text.contains(typed))
            take(kInside, word.at + static_cast<int>(word.text.indexOf(typed)), typed.size());
        else if (slips(typed, word.text))
            take(kSlip, word.at, std::min(typed.size(), word.text.size()));
    }
    return best;
}

} // namespace

Match matchOf(const QString &typed, const QString &head, const QString &tail, const QStringList &also)
{
    Match match;
    match.all = true;
    const std::vector<Word> inHead = wordsOf(head), inTail = wordsOf(tail), inAlso = wordsOf(also.join(QLatin1Char(' ')));
    for (const Word &word : wordsOf(typed)) {
        const Best h = bestIn(word.text, inHead), t = bestIn(word.text, inTail), a = bestIn(word.text, inAlso);
        const int score = std::max({h.score, t.score, a.score});
        match.score += score;
        match.all = match.all && score > 0;
        if (h.score > 0)
            match.head.push_back(h.where);
        if (t.score > 0)
            match.tail.push_back(t.where);
    }
    return match;
}

std::vector<Hit> nearest(std::vector<Hit> all, const QString &typed, std::size_t most)
{
    if (!plain(typed).trimmed().isEmpty()) {
        for (Hit &hit : all)
            hit.match = matchOf(typed, hit.head, hit.tail, hit.also);
        std::ranges::stable_sort(all, [](const Hit &a, const Hit &b) { return std::pair(a.match.all, a.match.score) > std::pair(b.match.all, b.match.score); });
        const auto full = std::ranges::find_if(all, [](const Hit &hit) { return !hit.match.all; });
        const auto kept = full == all.begin() ? all.begin() + static_cast<std::ptrdiff_t>(std::min(kNearOnes, all.size())) : full;
        all.erase(kept, all.end());
    }
    if (all.size() > most)
        all.resize(most);
    return all;
}

} // namespace app
