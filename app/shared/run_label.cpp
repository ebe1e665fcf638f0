#include "app/shared/run_label.h"

#include "app/shared/fit_height.h"
#include "app/shared/theme.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace app {

RunLabel::RunLabel(QWidget *parent) : QWidget(parent)
{
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    followHeight(this);
    followTheme(this);
}

RunLabel::RunLabel(Runs runs, QWidget *parent) : RunLabel(parent)
{
    setRuns(std::move(runs));
}

void RunLabel::setRuns(Runs runs)
{
    m_runs = std::move(runs);
    setAccessibleName(text());
    fitHeight(this);
    update();
}

void RunLabel::setText(const QString &text, Type type, Role role)
{
    setRuns({{text, type, role}});
}

void RunLabel::setAlignment(Qt::Alignment align)
{
    m_align = align;
    update();
}

TextBlock RunLabel::block(double width) const
{
    TextBlock::Options options;
    options.align = m_align;
    return TextBlock(m_runs, Theme::current().style(), width, options);
}

QSize RunLabel::sizeHint() const
{
    if (m_runs.empty())
        return {0, 0};
    // About sixty letters a line read well; a layout may give more or less.
    const double widest = TextBlock(m_runs, Theme::current().style()).width() + 1;
    const double wish = std::min(widest, Theme::current().px(460));
    const int width = static_cast<int>(std::ceil(wish));
    return {width, heightForWidth(width)};
}

QSize RunLabel::minimumSizeHint() const
{
    const int width = static_cast<int>(std::ceil(widestWord(m_runs, Theme::current().style()))) + 1;
    return {m_runs.empty() ? 0 : width, 0};
}

int RunLabel::heightForWidth(int width) const
{
    return m_runs.empty() ? 0 : static_cast<int>(std::ceil(block(width).height()));
}

void RunLabel::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    block(width()).paint(painter, {0, 0});
}

} // namespace app
