#include "app/paper/record_page.h"

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

namespace app {
namespace {

QString text(const std::string &s)
{
    return QString::fromStdString(s);
}

class Flow // blocks one under the other, a new page where one does not fit
{
public:
    Flow(QPagedPaintDevice &device, QPainter &painter) : m_device(device), m_painter(painter), m_area(painter.viewport()) {}

    void gap(double mm) { m_y += px(mm); }
    void block(const QString &line, double points, bool bold, double indentMm = 0)
    {
        QFont font(QStringLiteral("Meter First Sans"));
        font.setStyleHint(QFont::SansSerif);
        font.setPointSizeF(points);
        font.setBold(bold);
        m_painter.setFont(font);
        const QRect at(px(indentMm), 0, m_area.width() - px(indentMm), m_area.height());
        const QRect need = m_painter.boundingRect(at, Qt::TextWordWrap | Qt::AlignLeft, line);
        newPageFor(need.height());
        m_painter.drawText(at.translated(0, m_y), Qt::TextWordWrap | Qt::AlignLeft, line);
        m_y += need.height() + px(0.6);
    }
    void row(const RecordRow &r)
    {
        const QString what = r.good.empty() ? text(r.what) : text(r.what + "  (good: " + r.good + ")");
        const int columns[] = {0, px(14), px(108), px(142)};
        const QString cells[] = {text(r.when), what, text(r.said), text(r.word)};
        QFont font(QStringLiteral("Meter First Sans"));
        font.setPointSizeF(9);
        m_painter.setFont(font);
        int height = 0;
        QRect rects[4];
        for (int c = 0; c < 4; ++c) {
            const int right = c < 3 ? columns[c + 1] - px(2) : m_area.width();
            rects[c] = QRect(columns[c], 0, right - columns[c], m_area.height());
            height = std::max(height, m_painter.boundingRect(rects[c], Qt::TextWordWrap, cells[c]).height());
        }
        newPageFor(height);
        for (int c = 0; c < 4; ++c)
            m_painter.drawText(rects[c].translated(0, m_y), Qt::TextWordWrap, cells[c]);
        m_y += height + px(1);
        m_painter.setPen(QPen(QColor(QStringLiteral("#999999")), px(.1)));
        m_painter.drawLine(0, m_y - px(.5), m_area.width(), m_y - px(.5));
        m_painter.setPen(Qt::black);
    }
    void boxed(const QString &headline, const QString &sentence)
    {
        const int top = m_y;
        gap(3);
        block(headline, 16, true, 4);
        if (!sentence.isEmpty())
            block(sentence, 10.5, false, 4);
        gap(2);
        m_painter.setPen(QPen(Qt::black, px(.8)));
        m_painter.drawRect(0, top, m_area.width(), m_y - top);
        m_painter.setPen(Qt::black);
        gap(3);
    }

private:
    int px(double mm) const { return static_cast<int>(mm / 25.4 * m_device.logicalDpiX()); }
    void newPageFor(int height)
    {
        if (m_y + height <= m_area.height() || m_y == 0)
            return;
        m_device.newPage();
        m_y = 0;
    }

    QPagedPaintDevice &m_device;
    QPainter &m_painter;
    QRect m_area;
    int m_y = 0;
};

void lines(Flow &flow, const QString &title, const std::vector<std::string> &items)
{
    if (items.empty())
        return;
    flow.gap(2);
    flow.block(title, 10.5, true);
    for (const std::string &item : items)
        flow.block(text(item), 9.5, false, 4);
}

void rows(Flow &flow, const QString &title, const std::vector<RecordRow> &items)
{
    if (items.empty())
        return;
    flow.gap(2);
    flow.block(title, 10.5, true);
    for (const RecordRow &item : items)
        flow.row(item);
}

} // namespace

bool paintRecord(QPagedPaintDevice &device, const Record &r)
{
    QPainter painter;
    if (!painter.begin(&device))
        return false;
    Flow flow(device, painter);
    flow.block(QStringLiteral("Test record %1").arg(text(r.job)), 14, true);
    flow.block(text(r.date + "  \u00b7  " + r.appliance + ": " + r.complaint), 10, false);
    if (r.practice)
        flow.block(QStringLiteral("Practice: the times were told, not measured."), 10, true);
    flow.gap(2);
    flow.boxed(text(r.verdict), text(r.sentence));
    if (!r.basis.empty())
        flow.block(text("Limits: " + r.basis + ". Wiring: as assumed, not compared with the sheet."), 9.5, false);
    if (!r.proof.empty())
        flow.block(text("Proof: by " + r.proof + ". Meter: " + r.meter + "."), 9.5, false);
    rows(flow, QStringLiteral("Readings and looks"), r.readings);
    lines(flow, QStringLiteral("Behind it"), r.causes);
    lines(flow, QStringLiteral("To know"), r.notes);
    lines(flow, QStringLiteral("Still to be put back"), r.putBack);
    lines(flow, QStringLiteral("After the repair, prove it"), r.prove);
    if (!r.outcome.empty())
        flow.block(text("How it went: " + r.outcome), 9.5, true);
    rows(flow, QStringLiteral("Safety screens"), r.safety);
    flow.gap(3);
    flow.block(text(r.lastLine), 9, false);
    return painter.end();
}

bool writeRecordPdf(const QString &file, const Record &record, QString *fault)
{
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter pdf(&buffer);
    pdf.setTitle(QStringLiteral("Test record %1").arg(text(record.job)));
    pdf.setCreator(QStringLiteral("Meter First"));
    pdf.setPageSize(QPageSize(QPageSize::A4));
    pdf.setPageMargins(kRecordMargins, QPageLayout::Millimeter);
    pdf.setResolution(300);
    QSaveFile out(file);
    if (paintRecord(pdf, record) && out.open(QIODevice::WriteOnly) && out.write(bytes) == bytes.size() && out.commit())
        return true;
    *fault = out.errorString();
    return false;
}

} // namespace app
