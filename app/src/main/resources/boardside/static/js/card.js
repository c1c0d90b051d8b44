// The result card as a PNG: the picture the server drew, painted by this browser. Nothing leaves the device by itself.

const SCALE = 3;
const tools = document.getElementById("card-tools");
const said = document.getElementById("card-said");
const { svg, file, failed, alt } = tools.dataset;

function painted() {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => {
      const canvas = document.createElement("canvas");
      canvas.width = SCALE * Number(tools.dataset.width);
      canvas.height = SCALE * Number(tools.dataset.height);
      canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png");
    };
    image.onerror = () => reject(new Error("no picture"));
    image.src = svg;
  });
}

async function attempt(work) {
  said.textContent = "";
  try {
    await work(new File([await painted()], `${file}.png`, { type: "image/png" }));
  } catch (failure) {
    // Closing the sheet of the device is no failure.
    if (failure.name !== "AbortError") said.textContent = failed;
  }
}

document.getElementById("png").addEventListener("click", () => attempt((picture) => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(picture);
  link.download = picture.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}));

const share = document.getElementById("share");
const probe = new File(["x"], "x.png", { type: "image/png" });
if (navigator.canShare?.({ files: [probe] })) {
  share.hidden = false;
  share.addEventListener("click", () => attempt((picture) => navigator.share({ files: [picture], text: alt })));
}
