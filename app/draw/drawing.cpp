#include "app/draw/drawing.h"

#include <QFile>
#include <QPainter>
#include <QRegularExpression>

#include <algorithm>
#include <array>

namespace app {
namespace {

QString fileOf(const QString &name)
{
    return QStringLiteral(":/drawings/%1.svg").arg(name);
}

// Where the tag with this id starts and ends (its '>'), or {-1, -1}.
std::pair<qsizetype, qsizetype> tagOf(const QByteArray &svg, const QString &id)
{
    const qsizetype at = svg.indexOf("id=\"" + id.toUtf8() + '"');
    if (at < 0)
        return {-1, -1};
    return {svg.lastIndexOf('<', at), svg.indexOf('>', at)};
}

void setHidden(QByteArray &svg, const QString &id, bool hidden)
{
    const auto [start, end] = tagOf(svg, id);
    if (start < 0 || end < 0)
        return;
    QByteArray tag = svg.mid(start, end - start);
    tag.replace(" display=\"none\"", "");
    if (hidden)
        tag.replace("id=\"", "display=\"none\" id=\"");
    svg.replace(start, end - start, tag);
}

void setPosition(QByteArray &svg, const QString &position)
{
    if (position.isEmpty())
        return;
    for (const QString &each : {QStringLiteral("released"), QStringLiteral("pressed")})
        setHidden(svg, each, each != position);
}

void setDashed(QByteArray &svg, const QString &id)
{
    const auto [start, end] = tagOf(svg, id);
    if (id.isEmpty() || start < 0)
        return;
    const qsizetype at = svg.indexOf("id=\"", start);
    svg.insert(at, "stroke-dasharray=\"7 5\" ");
}

// One tab a terminal, 44 units apart, on a body that is nobody's.
QByteArray plainText(const std::vector<QString> &terminals)
{
    const int count = std::max(1, static_cast<int>(terminals.size()));
    const double step = std::min(56.0, 200.0 / count);
    const double top = 130 - step * (count - 1) / 2;
    QByteArray tabs;
    QByteArray dots;
    for (std::size_t i = 0; i < terminals.size(); ++i) {
        const QByteArray id = terminals[i].toHtmlEscaped().toUtf8();
        const QByteArray y = QByteArray::number(top + step * static_cast<double>(i) - 9);
        const QByteArray middle = QByteArray::number(top + step * static_cast<double>(i));
        tabs += "<rect id=\"" + id + "\" x=\"96\" y=\"" + y + "\" width=\"44\" height=\"18\" rx=\"3\"/>";
        dots += "<circle id=\"" + id + "-out\" cx=\"70\" cy=\"" + middle + "\" r=\"1\"/>";
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 260\">"
           "<g stroke-linejoin=\"round\"><rect id=\"body\" x=\"140\" y=\"24\" width=\"220\" height=\"212\" rx=\"8\" fill=\"#dde3e0\" "
           "stroke=\"#16201d\" stroke-width=\"2.5\"/></g>"
           "<g fill=\"#b7c0bc\" stroke=\"#16201d\" stroke-width=\"2\">" + tabs + "</g>"
           "<g fill=\"none\" stroke=\"none\">" + dots + "</g></svg>";
}

} // namespace

bool drawingExists(const QString &name)
{
    return !name.isEmpty() && QFile::exists(fileOf(name));
}

QByteArray recoloured(const QByteArray &svg, const Style &style)
{
    QByteArray out;
    out.reserve(svg.size());
    const auto roles = drawingRoles();
    for (qsizetype at = 0; at < svg.size();) {
        const qsizetype hash = svg.indexOf('#', at);
        if (hash < 0) {
            out += svg.mid(at);
            break;
        }
        out += svg.mid(at, hash - at);
        const QByteArray hex = svg.mid(hash, 7);
        const auto role = std::find_if(roles.begin(), roles.end(), [&](Role each) {
            return hex.compare(colourOf(each, Shade::Light).name().toLatin1(), Qt::CaseInsensitive) == 0;
        });
        out += role != roles.end() ? style[*role].name().toLatin1() : QByteArray("#");
        at = hash + (role != roles.end() ? hex.size() : 1);
    }
    return out.replace("font-family=\"B612\"", "font-family=\"" + sansFamily().toUtf8() + '"');
}

bool Drawing::loadText(QByteArray text)
{
    static const QRegularExpression dot(QStringLiteral("id=\"([^\"]+)-out\""));
    const QString drawn = QString::fromUtf8(text);
    for (auto each = dot.globalMatch(drawn); each.hasNext();)
        m_terminals.push_back(each.next().captured(1));
    return m_renderer.load(text);
}

std::unique_ptr<Drawing> Drawing::load(const DrawingWish &wish, const Style &style)
{
    QFile file(fileOf(wish.name));
    if (wish.name.isEmpty() || !file.open(QIODevice::ReadOnly))
        return nullptr;
    QByteArray svg = recoloured(file.readAll(), style);
    setPosition(svg, wish.position);
    setDashed(svg, wish.dashed);
    auto drawing = std::make_unique<Drawing>();
    return drawing->loadText(svg) ? std::move(drawing) : nullptr;
}

std::unique_ptr<Drawing> Drawing::plain(const std::vector<QString> &terminals, const Style &style)
{
    auto drawing = std::make_unique<Drawing>();
    drawing->loadText(recoloured(plainText(terminals), style));
    return drawing;
}

QRectF Drawing::bounds(const QString &id) const
{
    return has(id) ? m_renderer.boundsOnElement(id) : QRectF();
}

void Drawing::paint(QPainter &painter, const QRectF &into)
{
    const QSizeF size = viewBox().size().scaled(into.size(), Qt::KeepAspectRatio);
    const QRectF rect(into.center() - QPointF(size.width() / 2, size.height() / 2), size);
    m_renderer.render(&painter, rect);
}

} // namespace app
