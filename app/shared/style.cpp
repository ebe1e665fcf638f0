#include "app/shared/style.h"

#include <QDir>
#include <QFontDatabase>

namespace app {
namespace {

struct Face
{
    int pixels;
    bool bold;
    bool mono;
};

Face faceOf(Type type)
{
    switch (type) {
    case Type::Verdict: return {34, true, false};
    case Type::Say: return {25, true, false};
    case Type::Reading: return {30, true, false};
    case Type::SafetyHead: return {22, true, false};
    case Type::Safety: return {17, false, false};
    case Type::SafetyStrong: return {17, true, false};
    case Type::Heading: return {19, true, false};
    case Type::Title: return {16, true, false};
    case Type::Text: return {15, false, false};
    case Type::Strong: return {15, true, false};
    case Type::Quiet: return {13, false, false};
    case Type::QuietStrong: return {13, true, false};
    case Type::Key: return {12, true, true};
    case Type::Mono: return {13, false, true};
    case Type::Stop: return {27, false, false};
    case Type::StopStrong: return {27, true, false};
    case Type::StopHead: return {44, true, false};
    }
    Q_UNREACHABLE();
}

QString loadSans()
{
    QString family;
    const QDir fonts(QStringLiteral(":/fonts"));
    for (const QString &file : fonts.entryList({QStringLiteral("*.otf"), QStringLiteral("*.ttf")})) {
        const int id = QFontDatabase::addApplicationFont(fonts.filePath(file));
        const QStringList families = QFontDatabase::applicationFontFamilies(id);
        if (!families.isEmpty())
            family = families.first();
    }
    return family.isEmpty() ? QFontDatabase::systemFont(QFontDatabase::GeneralFont).family() : family;
}

QString findMono()
{
    const QString packaged = QStringLiteral("B612 Mono");
    return QFontDatabase::families().contains(packaged) ? packaged
                                                        : QFontDatabase::systemFont(QFontDatabase::FixedFont).family();
}

} // namespace

QString sansFamily()
{
    static const QString family = loadSans();
    return family;
}

QString monoFamily()
{
    static const QString family = findMono();
    return family;
}

QFont Style::font(Type type) const
{
    const Face face = faceOf(type);
    QFont font(face.mono ? monoFamily() : sansFamily());
    font.setPixelSize(qRound(face.pixels * scale));
    font.setWeight(face.bold ? QFont::Bold : QFont::Normal);
    font.setStyleHint(face.mono ? QFont::Monospace : QFont::SansSerif);
    return font;
}

QPen Style::pen(Role role, double width) const
{
    return QPen((*this)[role], width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
}

Style paperStyle()
{
    return {Shade::Light, 1};
}

} // namespace app
