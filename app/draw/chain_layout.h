#pragma once
// Where everything of the chain stands for one width: worked out once, then painted, hit and scrolled.
#include "app/draw/chain.h"
#include "app/shared/text_block.h"

#include <QRectF>

#include <memory>

namespace app {

struct ChainLayout
{
    enum class Kind { Row, Fold, Place, Condition };
    struct Item
    {
        Kind kind = Kind::Row;
        int rung = 0;                          // of rungs, or of places
        int index = 0;                         // of the row (Fold: the first one), or of the condition
        int count = 1;                         // rows folded into this one
        bool walked = true;                    // a stop of the arrow keys; the head of a place is none
        QRectF rect;                           // what is tinted and pressed
        double wireX = 0, top = 0, bottom = 0; // the symbol's ends
        QPointF textAt;
        std::shared_ptr<TextBlock> name, words, more; // more: shelf, or the names of folded rows
        QPointF wordsAt, moreAt, markAt;
        std::shared_ptr<TextBlock> badge; // "likeliest now"
        QRectF badgeRect;
    };
    struct Rail
    {
        double wireX = 0, top = 0, bottom = 0;
        QString topName, bottomName, title;
    };

    std::vector<Item> items;
    std::vector<Rail> rails;
    bool conditionsBelow = false; // as lines under the chain
    double bracketX = 0;
    double textWidth = 0;
    double height = 0;     // down to the lower rail
    double footHeight = 0; // the line about the wires, below it
    std::shared_ptr<TextBlock> foot;
    QString secondAsLine; // "same part: motor rung": where two rungs do not fit
    bool strip = false;   // all marks at the right edge
    bool tight = false;   // rows close together

    [[nodiscard]] const Item *itemOf(int rung, int row) const; // the fold it is in, too
};

// `folds`: runs of three and more cleared rows become one. `tight`: as low as the words allow.
ChainLayout layOutChain(const ChainState &state, double width, const Style &style, bool folds, bool tight = false);

inline constexpr double kRailY = 14;    // px at 100 %: the upper rail
inline constexpr double kRailZone = 26; // px at 100 %: what is pinned at top and bottom
inline constexpr double kStripWidth = 22;
inline constexpr std::size_t kManyRows = 12;

} // namespace app
