//! Japanese.

use super::Row;
use crate::facts::ColourWord as C;
use crate::facts::LampKind as L;
use crate::reading::roles::Role as R;
use crate::reading::roles::Unit as U;

pub(super) const ROWS: &[Row] = &[
    (R::Unit(U::Watt), "ワット"),
    (R::Unit(U::Volt), "ボルト"),
    (R::Unit(U::Other), "時間 年 分 段階 種類 センチ"),
    (R::DrawAdjective, "実際 実測 実 実際の 実質"),
    (R::DrawNoun, "消費電力 消費 実消費電力 実効電力 実電力 実測値"),
    (R::Only, "わずか たった のみ だけ"),
    (R::Power, "電力 出力 ワット数"),
    (R::Rating, "定格 定格電力 最大 公称 定格出力"),
    (R::Equivalent, "相当 同等 換算 相当の 形 形相当"),
    (R::Replaces, "代替 置き換え 代わり"),
    (R::Lamp(L::Hps), "ナトリウムランプ ナトリウム 高圧ナトリウム"),
    (R::Lamp(L::Mh), "メタルハライド メタハラ"),
    (R::Lamp(L::Incandescent), "白熱電球 白熱灯 白熱球 ハロゲン"),
    (R::Lamp(L::Fluorescent), "蛍光灯"),
    (R::Diode, "ビーズ 素子 チップ 灯"),
    (R::Double, "ダブル デュアル"),
    (R::Pieces, "個 粒 本 枚 球"),
    (R::Pack, "個セット 本セット セット 個入り 個入 本入り 枚セット 個組"),
    (R::Light, "ライト 電球 照明 ランプ"),
    (R::Part, "ヘッド バー パネル アーム"),
    (R::Each, "各 ずつ"),
    (R::Total, "合計 計"),
    (R::Device, "ファン ポンプ タイマー アダプター アダプタ ケーブル"),
    (R::Deny, "ではない ではありません"),
    (R::Voltage, "電圧 入力電圧"),
    (R::Current, "電流"),
    (R::Approx, "約"),
    (R::Colour(C::Red), "赤 赤色"),
    (R::Colour(C::Blue), "青 青色"),
    (R::Colour(C::White), "白 白色"),
    (R::Colour(C::WarmWhite), "電球色 暖色"),
    (R::Colour(C::Green), "緑"),
    (R::Colour(C::Uv), "紫外線"),
    (R::Colour(C::Ir), "赤外線"),
    (R::Of, "の"),
];
